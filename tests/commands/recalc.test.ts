import { execFile } from "node:child_process";
import { copyFile, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { rawWorkbook } from "../workbook/raw-workbook";

const root = path.join(import.meta.dirname, "../..");

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly problem: string;
}

/** Runs the command as a script would, in another process. */
const recalc = (...argv: string[]): Promise<Ended> =>
  new Promise((resolve) => {
    const command = ["--import", "tsx", "src/commands/recalc.ts", ...argv];
    execFile(process.execPath, command, { cwd: root }, (error, out, problem) =>
      resolve({ code: error ? Number(error.code) : 0, out, problem }),
    );
  });

let folder: string;
const inFolder = (name: string) => path.join(folder, name);

const sheet = (cells: string) =>
  rawWorkbook({ sheets: { Log: `<sheetData><row r="1">${cells}</row></sheetData>` } });

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "recalc-"));
  await writeFile(inFolder("text.xlsx"), "day;dose");
  await writeFile(inFolder("taken.xlsx"), "somebody's work");
  await writeFile(inFolder("macros.xlsm"), sheet(""));
});
afterAll(() => rm(folder, { recursive: true }));

// Each test starts a process of its own, and the last ones build the functions in it.
vi.setConfig({ testTimeout: 60_000 });

describe("recalc refuses in one sentence and ends with 2", () => {
  test.each([
    ["no workbook", () => [], /^Give the name of one workbook/],
    [
      "a second name without --out",
      () => ["x.xlsx", "y.xlsx"],
      /^The names given are x\.xlsx and y\.xlsx\. Give one workbook; the name to write goes after --out/,
    ],
    [
      "an option that it does not have",
      () => ["x.xlsx", "--fast"],
      /^Unknown option '--fast'\. Try --help\.$/,
    ],
    [
      "a file that is not there",
      () => [inFolder("none.xlsx")],
      /none\.xlsx does not exist\. Give the path of a workbook\.$/,
    ],
    [
      "a folder",
      () => [folder, "--out", `${folder}-x`],
      / is a folder\. Give the path of a workbook\.$/,
    ],
    [
      "a file of another kind",
      () => [inFolder("text.xlsx")],
      /text\.xlsx: The file is not a workbook/,
    ],
    [
      "to overwrite",
      () => [inFolder("text.xlsx"), "--out", inFolder("taken.xlsx")],
      /taken\.xlsx exists already and is not overwritten: remove it, or give another name/,
    ],
    [
      "a folder that is not there",
      () => [inFolder("text.xlsx"), "--out", inFolder("none/x.xlsx")],
      /^There is no folder .*none to write into\.$/,
    ],
    [
      "macros under a name that cannot hold them",
      () => [inFolder("macros.xlsm"), "--out", inFolder("x.xlsx")],
      /^Give --out a name that ends in \.xlsm/,
    ],
  ])("%s", async (_, argv, sentence) => {
    const { code, out, problem } = await recalc(...argv());
    expect(problem.trim()).toMatch(sentence);
    expect(out).toBe("");
    expect(code).toBe(2);
    expect(await readFile(inFolder("taken.xlsx"), "utf8")).toBe("somebody's work");
  });
});

describe("recalc ends with what a script needs to know", () => {
  test("0 where all is well: a template, whose values are those that it computes", async () => {
    const input = inFolder("dose.xlsx");
    await copyFile(path.join(root, "templates/dose-and-effluent.xlsx"), input);
    const before = await readFile(input);
    const { code, out, problem } = await recalc(input);
    expect(problem).toBe("");
    expect(out).toMatch(/Dosewright formulas computed, 0 cells changed\./);
    expect(code).toBe(0);
    expect(await readdir(folder)).toContain("dose.recalculated.xlsx");
    expect(Buffer.compare(await readFile(input), before)).toBe(0);
  });

  test("1 where a cell of ours fails, and says why", async () => {
    const input = inFolder("fails.xlsx");
    await writeFile(
      input,
      sheet('<c r="B1"><f>_xldudf_WETEND_DOSE_TARGET(6.5,1.4)</f><v>1</v></c>'),
    );
    const { code, out } = await recalc(input, "--values");
    expect(out).toMatch(/1 cell failed:\n {2}Log!B1 {2}#VALUE! {2}.*1\.4/);
    expect(code).toBe(1);
    expect(await readdir(folder)).toContain("fails.values.xlsx");
  });
});

test("recalc --help says what it does and how it ends", async () => {
  const { code, out } = await recalc("--help");
  expect(code).toBe(0);
  for (const word of ["--out", "--all", "--values", "1 where", "2 where", "3 where"])
    expect(out).toContain(word);
});
