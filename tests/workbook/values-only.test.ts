import { readFile } from "node:fs/promises";
import path from "node:path";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { cellAt } from "../../src/workbook/book";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { type OpenedWorkbook, readWorkbook } from "../../src/workbook/read/read-workbook";
import { valuesOnly } from "../../src/workbook/values-only";
import { rawWorkbook } from "./raw-workbook";

const names = functionNames(["DOSE.TARGET", "TRIAL.LADDER"]);
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

const original = rawWorkbook({
  sheets: {
    "Mill log":
      '<sheetData><row r="1"><c r="A1" t="str"><v>Dose</v></c><c r="B1"><f>_xldudf_WETEND_DOSE_TARGET(6.5,0.8)</f><v>8.125</v></c><c r="C1"><f>B1*2</f><v>16.25</v></c></row><row r="2"><c r="A2"><f>log[[#This Row],[Dose]]*_xldudf_WETEND_DOSE_TARGET(1,1)</f><v>3</v></c><c r="B2" cm="1"><f t="array" ref="B2:B3">_xldudf_WETEND_TRIAL_LADDER(4,8,2,"even",FALSE)</f><v>4</v></c><c r="C2" cm="1"><f t="array" ref="C2">SUM(_xlfn.ANCHORARRAY(B2))</f><v>12</v></c><c r="D2"><f>target+1</f><v>9.125</v></c><c r="E2"><f t="array" ref="E2">SUM(_xlfn.TAKE(_xlfn.ANCHORARRAY(B2),1))</f><v>4</v></c><c r="F2"><f>IFERROR(B1/0,_xlfn.STDEV.S(A1:B1))</f><v>1</v></c><c r="G2" cm="1"><f t="array" ref="G2:G3">F1:F2+1</f><v>1</v></c><c r="H2" cm="1"><f t="array" ref="H2:H3">_xlfn.ANCHORARRAY(G2)*2</f><v>2</v></c><c r="I2"><f>double(B1)+rest</f><v>18</v></c></row><row r="3"><c r="B3"><v>8</v></c><c r="G3"><v>2</v></c><c r="H3"><v>4</v></c></row></sheetData><tableParts count="1"><tablePart r:id="rId1"/></tableParts>',
    "Values only":
      '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>taken</t></is></c></row></sheetData>',
  },
  dynamicArrays: true,
  definedNames:
    '<definedName name="target">_xldudf_WETEND_DOSE_TARGET(6.5,0.8)</definedName><definedName name="double">_xlfn.LAMBDA(_xlpm.x,_xlpm.x*2)</definedName><definedName name="rest">double(1)</definedName><definedName name="ladder">SUM(_xlfn.ANCHORARRAY(\'Mill log\'!$B$2))</definedName>',
  parts: {
    "xl/worksheets/_rels/sheet1.xml.rels":
      '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/table" Target="../tables/table1.xml"/></Relationships>',
    "xl/tables/table1.xml": `<table xmlns="${main}" id="1" name="log" displayName="log" ref="A1:A2"><tableColumns count="1"><tableColumn id="1" name="Dose"><calculatedColumnFormula>log[[#This Row],[Dose]]*_xldudf_WETEND_DOSE_TARGET(1,1)</calculatedColumnFormula></tableColumn></tableColumns></table>`,
  },
});

describe("the copy for a colleague without the add-in", () => {
  let copy: OpenedWorkbook;
  let bytes: Uint8Array;

  beforeAll(async () => {
    const opened = await readWorkbook(original, names);
    ({ bytes } = await valuesOnly(opened, opened.book, names, "Dosewright 0.0.0"));
    copy = await readWorkbook(bytes, names);
  });

  const at = (row: number, column: number) =>
    copy.book.sheets[0] && cellAt(copy.book.sheets[0], row, column);

  test("holds values where our formulas were, and the other formulas", () => {
    expect(at(0, 1)).toEqual({ value: 8.125 });
    expect(at(0, 2)).toEqual({ value: 16.25, formula: "B1*2" });
    expect([at(1, 1), at(2, 1)]).toEqual([{ value: 4 }, { value: 8 }]);
    expect(at(1, 0)).toEqual({ value: 3 });
    expect(at(1, 3)).toEqual({ value: 9.125 });
    expect(at(1, 5)).toEqual({ value: 1, formula: "IFERROR(B1/0,STDEV.S(A1:B1))" });
  });

  test("holds values where a formula has a function that many programs lack", () => {
    expect(at(1, 4)).toEqual({ value: 4 });
    expect(at(1, 8)).toEqual({ value: 18 });
  });

  test("names the cells of what no formula fills any more", () => {
    expect(at(1, 2)).toMatchObject({ value: 12, formula: "SUM(B2:B3)" });
    expect(copy.book.definedNames).toContainEqual({
      name: "ladder",
      formula: "SUM('Mill log'!$B$2:$B$3)",
    });
  });

  test("names the cells of what a formula fills, too: many programs lack the mark for them", () => {
    expect(at(1, 6)).toMatchObject({ value: 1, formula: "F1:F2+1" });
    expect(at(1, 7)).toMatchObject({ value: 2, formula: "G2:G3*2" });
  });

  test("has none of our functions left in any of its parts", async () => {
    for (const path of copy.file.paths)
      expect(await copy.file.text(path)).not.toContain("_xldudf_");
  });

  test("says on a sheet of its own what computed it and which formulas were replaced", async () => {
    const read = await new ExcelJS.Workbook().xlsx.load(bytes.slice().buffer as ArrayBuffer);
    expect(read.worksheets.map(({ name }) => name)).toEqual([
      "Mill log",
      "Values only",
      "Values only 2",
    ]);
    const note = read.worksheets[2];
    const lines: unknown[][] = [];
    note?.eachRow((row) => lines.push((row.values as unknown[]).slice(1)));
    expect(lines.flat().join("\n")).toContain("Dosewright 0.0.0 computed the values");
    expect(lines.slice(3)).toEqual([
      ["Sheet", "Cell", "Formula"],
      ["Mill log", "B1", "=WETEND.DOSE.TARGET(6.5,0.8)"],
      ["Mill log", "A2", "=log[[#This Row],[Dose]]*WETEND.DOSE.TARGET(1,1)"],
      ["Mill log", "B2", '=WETEND.TRIAL.LADDER(4,8,2,"even",FALSE)'],
      ["Mill log", "D2", "=target+1"],
      ["Mill log", "E2", "=SUM(TAKE(B2#,1))"],
      ["Mill log", "I2", "=double(B1)+rest"],
      ["(defined name)", "target", "=WETEND.DOSE.TARGET(6.5,0.8)"],
    ]);
    expect(note?.getCell("C6").formula).toBeUndefined();
  });
});

test("a column of a table that holds one formula takes one line of the list", async () => {
  const names = functionNames(["STRENGTH.INDEX"]);
  const file = await readFile(path.join(import.meta.dirname, "../../templates/dose-ladder.xlsx"));
  const opened = await readWorkbook(new Uint8Array(file), names);
  const { bytes } = await valuesOnly(opened, opened.book, names, "Dosewright 0.0.0");
  const copy = await readWorkbook(bytes, names);
  const cells = Object.values(copy.book.sheets.at(-1)?.cells ?? {});
  const listed = cells.map((line) => [line[0]?.value, line[1]?.value]);
  const ofTable = listed.filter(([sheet, cell]) => sheet === "Results" && /^G/.test(`${cell}`));
  expect(ofTable).toEqual([["Results", "G5:G54"]]);
});

describe("what a formula shows of formatted cells", () => {
  const sheet = (formula: string, filled: readonly string[], anchorStyle = "") =>
    rawWorkbook({
      sheets: {
        S: `<sheetData>${filled
          .map((value, at) => {
            const own = `<c r="A${at + 1}" s="1"><v>${45000 + at}</v></c><c r="B${at + 1}"><v>${at + 1}</v></c>`;
            const [first, second] = value.split(" ");
            const array = at === 0 ? `<f t="array" ref="D1:E${filled.length}">${formula}</f>` : "";
            const mark = at === 0 ? ` cm="1"${anchorStyle}` : "";
            return `<row r="${at + 1}">${own}<c r="D${at + 1}"${mark}>${array}<v>${first}</v></c><c r="E${at + 1}"><v>${second}</v></c></row>`;
          })
          .join("")}</sheetData>`,
      },
      styles:
        '<numFmts count="1"><numFmt numFmtId="164" formatCode="yyyy-mm-dd"/></numFmts><cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="10"/></cellXfs>',
      dynamicArrays: true,
    });

  async function formats(file: Uint8Array): Promise<(string | undefined)[][]> {
    const opened = await readWorkbook(file, names);
    const { bytes } = await valuesOnly(opened, opened.book, names, "Dosewright 0.0.0");
    const { book } = await readWorkbook(bytes, names);
    const line = (row: number) =>
      [3, 4].map((column) => {
        const cell = book.sheets[0] && cellAt(book.sheets[0], row, column);
        expect(cell?.formula).toBeUndefined();
        return book.styles[cell?.style ?? ""]?.format;
      });
    return [line(0), line(1)];
  }

  test("has the formats of these cells, column by column", async () => {
    const filter = sheet("_xlfn._xlws.FILTER(A1:B2,B1:B2&gt;0)", ["45000 1", "45001 2"]);
    expect(await formats(filter)).toEqual([
      ["yyyy-mm-dd", undefined],
      ["yyyy-mm-dd", undefined],
    ]);
  });

  test("has none that belongs to other numbers", async () => {
    const filter = sheet("_xlfn._xlws.FILTER(A1:B2,B1:B2&gt;0)*2", ["90000 2", "90002 4"]);
    expect(await formats(filter)).toEqual([
      [undefined, undefined],
      [undefined, undefined],
    ]);
  });

  test("of our own, has the format of the formula's row above it", async () => {
    const ladder = sheet("_xldudf_WETEND_TRIAL_LADDER(A1,A2)", ["45000 1", "45001 2"], ' s="2"');
    expect(await formats(ladder)).toEqual([
      ["0.00%", undefined],
      ["0.00%", undefined],
    ]);
  });
});
