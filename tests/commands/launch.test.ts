import { spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, expect, test } from "vitest";

const launch = path.join(import.meta.dirname, "../../src/commands/launch.mjs");
const folder = mkdtempSync(path.join(os.tmpdir(), "launch-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (file: string, options: readonly string[], given: readonly string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...options, file, ...given], {
    encoding: "utf8",
  });
  return { status, stdout, stderr };
};

test("a command starts with what was given to it", () => {
  const { status, stdout } = run(launch, [], ["recalc", "--help"]);
  expect(stdout).toContain("npm run recalc -- book.xlsx");
  expect(status).toBe(0);
});

test("where the packages are not installed, one sentence says what to run", () => {
  const alone = path.join(folder, "src/commands/launch.mjs");
  mkdirSync(path.dirname(alone), { recursive: true });
  copyFileSync(launch, alone);
  expect(run(alone, [], ["start"])).toEqual({
    status: 1,
    stdout: "",
    stderr: "The packages are not installed yet. Run npm ci first.\n",
  });
});

test("an old Node is told which one is needed", () => {
  const old = path.join(folder, "old.mjs");
  writeFileSync(old, 'Object.defineProperty(process.versions, "node", { value: "18.20.4" });');
  expect(run(launch, ["--import", pathToFileURL(old).href], ["start"])).toEqual({
    status: 1,
    stdout: "",
    stderr: "This is Node.js 18.20.4. Dosewright needs 20 or later.\n",
  });
});
