/** The engine in Node, where the grid's packages load only as CommonJS. */
import { createRequire } from "node:module";
import type { BuiltFunctions } from "../build/built-functions";
import { createEngine, type Engine, type Packages } from "./engine";
import { loadFunctions } from "./functions";

const require = createRequire(import.meta.url);

export const packages: Packages = {
  core: require("@univerjs/core"),
  formula: require("@univerjs/engine-formula"),
};

/** An engine with the functions of one build. */
export const openEngine = (built: Pick<BuiltFunctions, "code" | "metadata">): Engine =>
  createEngine(packages, loadFunctions(built));
