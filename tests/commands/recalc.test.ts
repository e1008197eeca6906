import { execFile } from "node:child_process";
import { copyFile, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { rawWorkbook } from "../workbook/raw-workbook";

const root = path.join(import.meta.dirname, "../..");

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly problem: string;
}

/** Runs the command as a script would, in another process, some script before it. */
const recalcAfter = (before: readonly string[], argv: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    const preloaded = ["tsx", ...before].flatMap((script) => ["--import", script]);
    const command = [...preloaded, "src/commands/recalc.ts", ...argv];
    execFile(process.execPath, command, { cwd: root }, (error, out, problem) =>
      resolve({ code: error ? Number(error.code) : 0, out, problem }),
    );
  });
const recalc = (...argv: string[]) => recalcAfter([], argv);

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
vi.setConfig({ testTimeout: 300_000 });

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
      /text\.xlsx: The file is plain text, not a workbook/,
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

test("where the disk is full it ends with 2: no file, not even a half one, and the workbook as it was", async () => {
  const input = inFolder("full.xlsx");
  await writeFile(input, sheet('<c r="A1"><f>_xldudf_WETEND_DOSE_TARGET(6,0.5)</f><v>1</v></c>'));
  const before = await readFile(input);
  // A script that comes before the command and makes the file system fail.
  const half = inFolder("half.mjs");
  await writeFile(
    half,
    `import fs from "node:fs/promises";
import { syncBuiltinESMExports } from "node:module";
const { open } = fs;
fs.open = async (...given) => {
  const handle = await open(...given);
  handle.writeFile = async (bytes) => {
    await handle.write(bytes.subarray(0, 100));
    throw Object.assign(new Error("no room"), { code: "ENOSPC" });
  };
  return handle;
};
syncBuiltinESMExports();`,
  );
  const { code, problem } = await recalcAfter([pathToFileURL(half).href], [input]);
  expect(problem.trim()).toMatch(
    /^The disk is full: .*full\.recalculated\.xlsx was not written\.$/,
  );
  expect(code).toBe(2);
  const written = (await readdir(folder)).filter((one) => one.includes("full.recalculated"));
  expect(written).toEqual([]);
  expect(Buffer.compare(await readFile(input), before)).toBe(0);
});

test("what a workbook holds comes out as it went in: a text that begins like a formula stays a text", async () => {
  const input = inFolder("texts.xlsx");
  const text = (address: string, words: string) => `<c r="${address}" t="str"><v>${words}</v></c>`;
  const rows = ["=1+1", "+2", "-3", "@SUM(A1)"].map(
    (name, at) =>
      `<row r="${at + 3}">${text(`A${at + 3}`, name)}<c r="B${at + 3}"><v>0.5</v></c></row>`,
  );
  const inner = `<sheetData><row r="1"><c r="D1"><f t="array" ref="D1:D4">_xldudf_WETEND_LIBRARY_ADDITIVES(,A2:B6)</f></c></row><row r="2">${text("A2", "name")}${text("B2", "retention")}</row>${rows.join("")}</sheetData>`;
  await writeFile(input, rawWorkbook({ sheets: { Own: inner } }));
  const { code, problem } = await recalc(input);
  expect([code, problem]).toEqual([0, ""]);
  const { book } = await readWorkbook(
    await readFile(inFolder("texts.recalculated.xlsx")),
    functionNames([]),
  );
  expect([0, 1, 2, 3].map((at) => book.sheets[0]?.cells[at]?.[3]?.value)).toEqual([
    "=1+1",
    "+2",
    "-3",
    "@SUM(A1)",
  ]);
  for (const at of [1, 2, 3]) expect(book.sheets[0]?.cells[at]?.[3]?.formula).toBeUndefined();
});

test("a name out of the file cannot speak to the terminal, in a refusal either", async () => {
  const input = inFolder("speaks.xlsx");
  const sheets = { "S\u009b31m\u202e": "", "s\u009b31m\u202e": "" };
  await writeFile(input, rawWorkbook({ sheets }));
  const { code, problem } = await recalc(input);
  expect(problem).toMatch(/The file is damaged: two of its sheets are named s 31m \.\n$/);
  expect(code).toBe(2);
});

test("recalc --help says what it does and how it ends", async () => {
  const { code, out } = await recalc("--help");
  expect(code).toBe(0);
  for (const word of ["--out", "--all", "--values", "1 where", "2 where", "3 where"])
    expect(out).toContain(word);
});
