import type { TestProject } from "vitest/node";
import { type BuiltFunctions, buildFunctions } from "../src/build/built-functions";

declare module "vitest" {
  interface ProvidedContext {
    functions: BuiltFunctions;
  }
}

/** Builds the functions once for all tests that call them as a host does. */
export default async function setup(project: TestProject): Promise<void> {
  project.provide("functions", await buildFunctions());
}
