import { readdirSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { EsbuildPlugin } from "esbuild-loader";
import { FunctionTables } from "./src/build/function-tables";
import { HelpPages } from "./src/build/help-pages";

const CustomFunctionsMetadataPlugin = createRequire(import.meta.url)(
  "custom-functions-metadata-plugin",
);

const root = import.meta.dirname;
const DEVELOPMENT_ORIGIN = "https://127.0.0.1:3443";

/** One file a family declares its functions; the entry and nothing else there is no family. */
const families = readdirSync(path.join(root, "src/functions"))
  .filter((name) => name.endsWith(".ts") && name !== "index.ts")
  .map((name) => path.join(root, "src/functions", name));

/** Every part is TypeScript, checked by `npm run types` and only translated here. */
const typescript = {
  test: /\.tsx?$/,
  exclude: /node_modules/,
  loader: "ts-loader",
  options: {
    transpileOnly: true,
    compilerOptions: { noEmit: false, declaration: false, sourceMap: true },
  },
};

const shared = {
  mode: "production",
  context: root,
  devtool: "source-map",
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  performance: { hints: false },
  optimization: { minimizer: [new EsbuildPlugin({ target: "es2022", css: true })] },
};

/**
 * The functions, as every host loads them: functions.js runs in a bare engine that offers nothing but
 * CustomFunctions; functions.json says what each is; reference.json holds the words about them.
 */
function functions({ origin }) {
  return {
    ...shared,
    name: "functions",
    target: "es2022",
    entry: { functions: "./src/functions/index.ts" },
    output: {
      path: path.join(root, "dist"),
      filename: "[name].js",
      library: { name: "dosewright", type: "var" },
      chunkFormat: false,
    },
    module: { rules: [typescript] },
    plugins: [
      new CustomFunctionsMetadataPlugin({ output: "functions.json", input: families }),
      new FunctionTables({ files: families, origin }),
      new HelpPages(),
    ],
  };
}

export default ({ origin = DEVELOPMENT_ORIGIN } = {}) => [functions({ origin })];
