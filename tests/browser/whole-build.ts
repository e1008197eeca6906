import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import configurations from "../../webpack.config";
import { buildInMemory } from "./build-in-memory";

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
