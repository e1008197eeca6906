import path from "node:path";
import type { Configuration } from "webpack";
import type { BuiltFunctions } from "../../../src/build/built-functions";
import configurations from "../../../webpack.config";
import { buildInMemory } from "../build-in-memory";
import { type Served, serveFiles } from "../serve-files";

const HTML = `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><link rel="icon" href="data:,"><title>Dosewright</title>
<meta name="viewport" content="width=device-width, initial-scale=1"></head>
<body style="margin:0"><main id="pane" style="min-height:100vh;display:grid"></main>
<script>
const functions = new Map();
const CustomFunctions = {
  associate: (id, body) => functions.set(id, body),
  Error: class { constructor(code, message) { this.code = code; this.message = message; } },
  ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A", divisionByZero: "#DIV/0!" },
};
</script>
<script src="functions.js"></script>
<script type="module" src="page.js"></script></body></html>`;

/** Builds the pane with its test page in memory and serves both to this machine. */
export async function servePane({ code, reference }: BuiltFunctions): Promise<Served> {
  return serveFiles({
    ...(await bundle()),
    "functions.js": code,
    "reference.json": JSON.stringify(reference),
    "index.html": HTML,
  });
}

async function bundle(): Promise<Readonly<Record<string, Buffer>>> {
  const like = configurations().find(({ name }) => name === "addin");
  return buildInMemory({
    ...like,
    mode: "development",
    entry: { page: path.join(import.meta.dirname, "page.ts") },
    output: { path: "/", filename: "[name].js", chunkFilename: "[name].js", module: true },
    experiments: { outputModule: true },
    optimization: {},
    plugins: [],
  } as Configuration);
}
