import path from "node:path";
import type { Configuration } from "webpack";
import configurations from "../../../webpack.config";
import { buildInMemory } from "../build-in-memory";

/** The script that stands between Excel's library and our functions. */
export async function buildBridge(): Promise<string> {
  const addin = configurations().find(({ name }) => name === "addin") as Configuration;
  const files = await buildInMemory({
    mode: "development",
    entry: path.join(import.meta.dirname, "bridge.ts"),
    output: { path: "/bridge", filename: "bridge.js" },
    module: addin.module ?? {},
    resolve: addin.resolve ?? {},
    devtool: false,
  });
  return String(files["bridge.js"]);
}
