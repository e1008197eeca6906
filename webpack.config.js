import { readdirSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { EsbuildPlugin } from "esbuild-loader";
import HtmlWebpackPlugin from "html-webpack-plugin";
import webpack from "webpack";
import about from "./package.json" with { type: "json" };
import { FunctionTables } from "./src/build/function-tables";
import { GridBundle, lentPackage } from "./src/build/grid-bundle";
import { headerList } from "./src/build/headers";
import { HelpPages } from "./src/build/help-pages";
import { Licences } from "./src/build/licences";
import { DEVELOPMENT_ORIGIN, readOrigin } from "./src/build/manifest/manifest";
import { ManifestFile } from "./src/build/manifest/manifest-file";
import {
  OFFICIAL_LIBRARY,
  OfficeLibrary,
  OWN_LIBRARY,
  officeLicence,
} from "./src/build/office-library";
import { WrittenFile } from "./src/build/written-file";
import { NAMESPACE } from "./src/help/reference";

const CustomFunctionsMetadataPlugin = createRequire(import.meta.url)(
  "custom-functions-metadata-plugin",
);

const root = import.meta.dirname;

/** Each file declares functions of one family; the entry and nothing else there declares none. */
const declarations = readdirSync(path.join(root, "src/functions"))
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

/** The same without the compiler, for a page that somebody waits for. */
const quickTypescript = {
  test: /\.tsx?$/,
  exclude: /node_modules/,
  loader: "esbuild-loader",
  options: { target: "es2022", jsx: "automatic" },
};

const shared = {
  mode: "production",
  context: root,
  devtool: "source-map",
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  performance: { hints: false },
  // The library of Excel is copied as it is: its licence asks for that, and its globals must stay global.
  optimization: {
    minimizer: [new EsbuildPlugin({ target: "es2022", css: true, exclude: /^office\// })],
  },
};

/**
 * The functions, as every host loads them: functions.js runs in a bare engine that offers nothing but
 * CustomFunctions; functions.json says what each is; reference.json holds the words about them.
 */
function functions({ origin, namespace }) {
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
      new CustomFunctionsMetadataPlugin({ output: "functions.json", input: declarations }),
      new FunctionTables({ files: declarations, origin, namespace }),
      new HelpPages(),
    ],
  };
}

/**
 * A package that asks where its own file lies is told where the page is: the builder's answer would be the
 * path of the machine that built it.
 */
const ownPlace = new webpack.DefinePlugin({ "import.meta.url": "self.location.href" });

/**
 * The add-in's one page, where functions and pane share a runtime, with its manifest; and the pane as a
 * page of its own, for a browser without any sheet. What is loaded later carries a hash in its name, so
 * that a browser may keep it for ever.
 */
function addin({ origin, namespace, office }) {
  const own = office === "own";
  return {
    ...shared,
    name: "addin",
    target: ["web", "es2022"],
    entry: { taskpane: "./src/taskpane/start.ts", pane: "./src/taskpane/alone.ts" },
    output: {
      path: path.join(root, "dist"),
      filename: "assets/[name].[contenthash:12].js",
      chunkFilename: "assets/[name].[contenthash:12].js",
      // What an earlier build left under other names goes; the rest of the folder is not this part's.
      clean: { keep: (file) => !file.startsWith("assets/") },
    },
    module: { rules: [typescript] },
    plugins: [
      ownPlace,
      new HtmlWebpackPlugin({
        template: "./src/taskpane/taskpane.html",
        filename: "taskpane.html",
        chunks: ["taskpane"],
        templateParameters: { namespace, office: own ? OWN_LIBRARY : OFFICIAL_LIBRARY },
      }),
      new HtmlWebpackPlugin({
        template: "./src/taskpane/pane.html",
        filename: "pane.html",
        chunks: ["pane"],
      }),
      new ManifestFile(path.join(root, "manifest"), { origin, namespace, version: about.version }),
      new WrittenFile("headers.txt", headerList(office)),
      new Licences(own ? officeLicence() : undefined),
      ...(own ? [new OfficeLibrary()] : []),
    ],
  };
}

/** The workbench: the page of `npm start`, served from memory and never written, so it is not minified. */
export function workbench() {
  return {
    ...shared,
    name: "workbench",
    mode: "development",
    devtool: false,
    target: ["web", "es2022"],
    entry: { workbench: "./src/workbench/main.ts" },
    output: { path: path.join(root, "dist"), filename: "[name].js", chunkFilename: "[name].js" },
    module: { rules: [quickTypescript, { test: /\.css$/, use: ["style-loader", "css-loader"] }] },
    externals: [async ({ request }) => lentPackage(request)],
    optimization: { nodeEnv: "production" },
    plugins: [
      ownPlace,
      new GridBundle(path.join(root, "src/workbench/grid/grid-packages.ts")),
      new HtmlWebpackPlugin({ template: "./src/workbench/page.html", filename: "workbench.html" }),
    ],
  };
}

/**
 * npm run build -- --env origin=https://example.org/dosewright
 *   origin     where the folder dist/ will be served from; the development server if left out
 *   office     "official" takes office.js from its vendor's address; else the build holds a copy
 *   namespace  what goes before a function's name; another one only for a second copy beside the first
 */
export default ({ origin = DEVELOPMENT_ORIGIN, office = "own", namespace = NAMESPACE } = {}) => {
  if (!["own", "official"].includes(office))
    throw new Error(`office is "${office}". Give own or official.`);
  const choices = { origin: readOrigin(origin), office, namespace };
  return [functions(choices), addin(choices)];
};
