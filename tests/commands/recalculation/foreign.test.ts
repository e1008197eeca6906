import ExcelJS from "exceljs";
import { expect, inject, test, vi } from "vitest";
import { recalculate } from "../../../src/commands/recalculation/recalculate";
import { openEngine } from "../../../src/engine/node";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { editsBetween } from "../../../src/workbook/patch/edits";
import { patchWorkbook } from "../../../src/workbook/patch/patch-workbook";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { type RawWorkbook, rawWorkbook } from "../../workbook/raw-workbook";

const functions = inject("functions");
const names = functionNames(functions.metadata.functions.map(({ id }) => id));
const engine = openEngine(functions);

/** What the command does between reading the file and writing the new one. */
async function recalculated(bytes: Uint8Array) {
  const opened = await readWorkbook(bytes, names);
  const result = await recalculate(opened.book, engine, names);
  const { bytes: patched } = await patchWorkbook(
    opened,
    editsBetween(opened.book, result.book),
    names,
  );
  const again = await readWorkbook(patched, names);
  return { ...result, patched, again: again.book };
}

const recalculatedRaw = (raw: RawWorkbook) => recalculated(rawWorkbook(raw));

const days = 2000;
// The engine and the other library take their time where a machine has much else to do.
vi.setConfig({ testTimeout: 30_000 });

const retentionOf = (day: number) => 0.7 + (day % 25) / 100;

test("a workbook of another library: names, tables, other sheets, shared formulas, dates, thousands of rows", async () => {
  const workbook = new ExcelJS.Workbook();
  const about = workbook.addWorksheet("About the mill");
  about.getCell("B2").value = 6.5;
  workbook.definedNames.add("'About the mill'!$B$2", "wanted");
  const log = workbook.addWorksheet("Log");
  const rows = Array.from({ length: days }, (_, day) => [
    new Date(Date.UTC(2020, 0, 1 + day)),
    retentionOf(day),
  ]);
  log.addTable({
    name: "Days",
    ref: "A1",
    headerRow: true,
    columns: [{ name: "Day" }, { name: "Retention" }],
    rows,
  });
  const formula = "_xldudf_WETEND_DOSE_TARGET(wanted,B2)";
  log.getCell("D2").value = { formula, result: 0 };
  log.getCell("D2").numFmt = "0.00";
  for (let row = 3; row <= days + 1; row++)
    log.getCell(row, 4).value = {
      sharedFormula: "D2",
      result: 0,
    } as ExcelJS.CellSharedFormulaValue;
  log.getCell("F1").value = { formula: "YEAR(A2)*10+MONTH(A2)", result: 20201 };
  log.getCell("F2").value = {
    formula: "_xldudf_WETEND_DOSE_TARGET(wanted,AVERAGE(Days[Retention]))",
    result: 0,
  };
  log.getCell("F3").value = { formula: "SUM(D2:D2001)/2000", result: 0 };
  log.getCell("F4").value = {
    formula: "NA()",
    result: { error: "#N/A" } as ExcelJS.CellErrorValue,
  };
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());

  const { patched, kept, failures, ours } = await recalculated(bytes);
  expect({ kept, failures, ours }).toEqual({ kept: [], failures: [], ours: days + 1 });

  const read = await new ExcelJS.Workbook().xlsx.load(patched.slice().buffer as ArrayBuffer);
  const sheet = read.getWorksheet("Log");
  let sum = 0;
  for (let day = 0; day < days; day++) {
    const expected = 6.5 / retentionOf(day);
    expect(sheet?.getCell(day + 2, 4).result).toBeCloseTo(expected, 12);
    sum += expected;
  }
  expect(sheet?.getCell("D2").numFmt).toBe("0.00");
  expect(sheet?.getCell("A2").value).toEqual(new Date(Date.UTC(2020, 0, 1)));
  expect(sheet?.getCell("F1").result).toBe(20201);
  expect(sheet?.getCell("F2").result).toBeCloseTo(6.5 / 0.82, 12);
  expect(sheet?.getCell("F3").result).toBeCloseTo(sum / days, 10);
  expect(sheet?.getCell("F4").result).toEqual({ error: "#N/A" });
});

const ladder = '_xldudf_WETEND_TRIAL_LADDER(1,9,A1,"even",FALSE)';

test("a spill that grows is written with its cells, and the cells below it move nowhere", async () => {
  const { again, failures } = await recalculatedRaw({
    dynamicArrays: true,
    sheets: {
      S: `<dimension ref="A1:B2"/><sheetData><row r="1"><c r="A1"><v>5</v></c><c r="B1" cm="1"><f t="array" ref="B1:B2">${ladder}</f><v>1</v></c></row><row r="2"><c r="B2"><v>9</v></c></row><row r="9"><c r="B9"><v>99</v></c></row></sheetData>`,
    },
  });
  expect(failures).toEqual([]);
  const cells = again.sheets[0]?.cells;
  expect(cells?.[0]?.[1]?.spill).toEqual({ rows: 5, columns: 1 });
  expect([0, 1, 2, 3, 4].map((row) => cells?.[row]?.[1]?.value)).toEqual([1, 3, 5, 7, 9]);
  expect(cells?.[8]?.[1]).toEqual({ value: 99 });
});

test("a spill that shrinks leaves nothing behind but formats", async () => {
  const { again } = await recalculatedRaw({
    dynamicArrays: true,
    styles: '<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="2"/></cellXfs>',
    sheets: {
      S: `<sheetData><row r="1"><c r="A1"><v>2</v></c><c r="B1" cm="1"><f t="array" ref="B1:B4">${ladder}</f><v>1</v></c></row><row r="2"><c r="B2"><v>3</v></c></row><row r="3"><c r="B3" s="1"><v>5</v></c></row><row r="4"><c r="B4"><v>9</v></c></row></sheetData>`,
    },
  });
  const cells = again.sheets[0]?.cells;
  expect(cells?.[0]?.[1]?.spill).toEqual({ rows: 2, columns: 1 });
  expect(cells?.[1]?.[1]).toEqual({ value: 9, spilled: true });
  expect(cells?.[2]?.[1]).toEqual({ value: null, style: "s1" });
  expect(cells?.[3]).toBeUndefined();
});

test("a spill over cells that are taken is said, and the cells stay", async () => {
  const { again, failures } = await recalculatedRaw({
    dynamicArrays: true,
    sheets: {
      S: `<sheetData><row r="1"><c r="A1"><v>3</v></c><c r="B1" cm="1"><f t="array" ref="B1:B2">${ladder}</f><v>1</v></c></row><row r="2"><c r="B2"><v>9</v></c></row><row r="3"><c r="B3" t="str"><v>mine</v></c></row></sheetData>`,
    },
  });
  expect(failures).toMatchObject([{ sheet: "S", address: "B1", error: "#SPILL!" }]);
  const cells = again.sheets[0]?.cells;
  expect(cells?.[0]?.[1]).toMatchObject({
    value: { error: "#VALUE!" },
    spill: { rows: 1, columns: 1 },
  });
  expect(cells?.[1]?.[1]).toBeUndefined();
  expect(cells?.[2]?.[1]?.value).toBe("mine");
});

test("an array formula of the older kind keeps its reach", async () => {
  const { again } = await recalculatedRaw({
    sheets: {
      S: `<sheetData><row r="1"><c r="A1"><v>3</v></c><c r="B1"><f t="array" ref="B1:B4">${ladder}</f><v>0</v></c></row><row r="2"><c r="B2"><v>0</v></c></row><row r="3"><c r="B3"><v>0</v></c></row><row r="4"><c r="B4"><v>0</v></c></row></sheetData>`,
    },
  });
  const cells = again.sheets[0]?.cells;
  expect(cells?.[0]?.[1]).toMatchObject({ spill: { rows: 4, columns: 1 }, fixed: true });
  expect([0, 1, 2].map((row) => cells?.[row]?.[1]?.value)).toEqual([1, 5, 9]);
  expect(cells?.[3]?.[1]?.value).toEqual({ error: "#N/A" });
});

test("a reference to another workbook keeps what the file holds", async () => {
  const { again, kept } = await recalculatedRaw({
    sheets: {
      S: '<sheetData><row r="1"><c r="A1"><f>[1]Prices!$B$2</f><v>0.6</v></c><c r="B1"><f>_xldudf_WETEND_COST_ADDITIVE(8,A1,5)</f><v>0</v></c></row></sheetData>',
    },
  });
  expect(kept).toMatchObject([{ sheet: "S", address: "A1", saved: 0.6 }]);
  expect(again.sheets[0]?.cells[0]?.[1]?.value).toBeCloseTo(0.96, 14);
});
