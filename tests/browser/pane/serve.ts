import path from "node:path";
import { createFsFromVolume, Volume } from "memfs";
import { inject } from "vitest";
import webpack from "webpack";
import configurations from "../../../webpack.config";
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
export async function servePane(): Promise<Served> {
  const { code, reference } = inject("functions");
  return serveFiles({
    ...(await bundle()),
    "functions.js": code,
    "reference.json": JSON.stringify(reference),
    "index.html": HTML,
  });
}

async function bundle(): Promise<Record<string, string>> {
  const like = configurations().find(({ name }) => name === "addin");
  const compiler = webpack({
    ...like,
    mode: "development",
    devtool: false,
    entry: { page: path.join(import.meta.dirname, "page.ts") },
    output: { path: "/", filename: "[name].js", chunkFilename: "[name].js", module: true },
    experiments: { outputModule: true },
    optimization: {},
    plugins: [],
  } as webpack.Configuration);
  if (compiler === null) throw new Error("The pane's test page has no configuration.");
  const volume = new Volume();
  compiler.outputFileSystem = createFsFromVolume(volume) as unknown as webpack.OutputFileSystem;
  const stats = await new Promise<webpack.Stats | undefined>((resolve, reject) => {
    compiler.run((problem, result) => (problem === null ? resolve(result) : reject(problem)));
  });
  await new Promise<void>((resolve) => compiler.close(() => resolve()));
  if (stats === undefined || stats.hasErrors()) {
    throw new Error(stats?.toString({ all: false, errors: true }) ?? "The build gave no result.");
  }
  return Object.fromEntries(
    Object.entries(volume.toJSON()).map(([name, text]) => [name.slice(1), text ?? ""]),
  );
}
