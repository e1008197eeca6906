import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { TestProject } from "vitest/node";
import configurations from "../../webpack.config";
import { buildInMemory } from "./build-in-memory";

declare module "vitest" {
  interface ProvidedContext {
    /** The folder that `npm run build` writes, built once for all tests of it. */
    built: string;
  }
}

/** Where the build of the tests says that it is served from. */
export const ORIGIN = "https://example.org/dosewright";

export type Files = Readonly<Record<string, Buffer>>;

/** Every file of a whole build, by its path below the folder. */
export async function wholeBuild(): Promise<Files> {
  const files: Record<string, Buffer> = {};
  for (const part of configurations({ origin: ORIGIN })) {
    Object.assign(files, await buildInMemory(part));
  }
  return files;
}

/** The files of a folder, by their paths below it. */
export function filesIn(folder: string): Files {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return Object.fromEntries(
    entries
      .filter((entry) => entry.isFile())
      .map((entry) => path.join(entry.parentPath, entry.name))
      .map((file) => [path.relative(folder, file).replaceAll(path.sep, "/"), readFileSync(file)]),
  );
}

export default async function setup(project: TestProject): Promise<() => void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "built-"));
  for (const [name, bytes] of Object.entries(await wholeBuild())) {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, bytes);
  }
  project.provide("built", folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
