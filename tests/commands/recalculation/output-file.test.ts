import { execFile } from "node:child_process";
import fs, { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { syncBuiltinESMExports } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { writeOutput } from "../../../src/commands/recalculation/output-file";
import { WorkbookRefusal } from "../../../src/workbook/workbook-refusal";

const module = path.join(import.meta.dirname, "../../../src/commands/recalculation/output-file.ts");
const bytes = new Uint8Array(1000).fill(7);

let folder: string;
let output: string;

beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "output-"));
  output = path.join(folder, "book.xlsx");
});
afterEach(() => rm(folder, { recursive: true }));

/** Runs something while the file system fails after the first bytes of a file. */
async function whileWritingFails(code: string, run: () => Promise<void>): Promise<void> {
  const { open } = fs;
  fs.open = async (...given) => {
    const handle = await open(...given);
    handle.writeFile = async () => {
      await handle.write(bytes.subarray(0, 100));
      throw Object.assign(new Error("no more"), { code });
    };
    return handle;
  };
  syncBuiltinESMExports();
  try {
    await run();
  } finally {
    fs.open = open;
    syncBuiltinESMExports();
  }
}

test.each([
  ["ENOSPC", "The disk is full: FILE was not written."],
  ["EDQUOT", "There is no room left for this user: FILE was not written."],
  ["EFBIG", "FILE would be larger than this user may write: it was not written."],
  ["EACCES", "FILE may not be written by this user."],
  ["EPERM", "FILE may not be written by this user."],
  ["EROFS", "FILE is on a disk that cannot be written."],
])(
  "where writing ends in %s it is said so, and not even half a file is left",
  async (code, says) => {
    await whileWritingFails(code, async () => {
      await expect(writeOutput(output, bytes)).rejects.toThrow(
        new WorkbookRefusal(says.replace("FILE", output)),
      );
    });
    expect(await readdir(folder)).toEqual([]);
    await writeOutput(output, bytes);
    expect(await readdir(folder)).toEqual(["book.xlsx"]);
  },
);

test("a file that has come to be under the name meanwhile is not overwritten", async () => {
  await writeFile(output, "somebody's work");
  await expect(writeOutput(output, bytes)).rejects.toThrow(
    new WorkbookRefusal(`${output} exists already and is not overwritten.`),
  );
  expect(await readdir(folder)).toEqual(["book.xlsx"]);
  expect(await readFile(output, "utf8")).toBe("somebody's work");
});

test("where it is killed before the file has its name nothing is under that name, and the next run is whole", async () => {
  const script = `import fs from "node:fs/promises";
import { syncBuiltinESMExports } from "node:module";
fs.link = () => process.kill(process.pid, "SIGKILL");
syncBuiltinESMExports();
const { writeOutput } = await import(${JSON.stringify(module)});
await writeOutput(${JSON.stringify(output)}, new Uint8Array(1000));`;
  const signal = await new Promise((resolve) => {
    const command = ["--import", "tsx", "--input-type=module", "--eval", script];
    execFile(process.execPath, command, (problem) => resolve(problem?.signal));
  });
  expect(signal).toBe("SIGKILL");
  const left = await readdir(folder);
  expect(left).toEqual([expect.stringMatching(/^\.book\.xlsx\./)]);
  await writeOutput(output, bytes);
  expect(await readFile(output)).toEqual(Buffer.from(bytes));
});
