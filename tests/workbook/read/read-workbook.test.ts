import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import { cellAt } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { type RawWorkbook, rawWorkbook } from "../raw-workbook";

const names = functionNames(["DOSE.TARGET", "TRIAL.LADDER"]);

async function read(raw: RawWorkbook) {
  const { book } = await readWorkbook(rawWorkbook(raw), names);
  return book;
}

async function cell(inner: string, more: Partial<RawWorkbook> = {}) {
  const book = await read({
    sheets: { S: `<sheetData><row r="1">${inner}</row></sheetData>` },
    ...more,
  });
  return book.sheets[0] && cellAt(book.sheets[0], 0, 0);
}

describe("cells", () => {
  test.each([
    ["a number", '<c r="A1"><v>0.1</v></c>', 0.1],
    [
      "a number with all its digits",
      '<c r="A1"><v>0.30000000000000004</v></c>',
      0.30000000000000004,
    ],
    ["a number in scientific form", '<c r="A1" t="n"><v>1E-300</v></c>', 1e-300],
    ["a shared text", '<c r="A1" t="s"><v>1</v></c>', "bold and plain"],
    ["a text of its own", '<c r="A1" t="inlineStr"><is><t>a &lt; b</t></is></c>', "a < b"],
    ["the text of a formula", '<c r="A1" t="str"><f>"x"</f><v>x_x0041_y</v></c>', "xAy"],
    ["an empty text", '<c r="A1" t="str"><f>""</f><v></v></c>', ""],
    ["a Boolean", '<c r="A1" t="b"><v>1</v></c>', true],
    ["an error", '<c r="A1" t="e"><v>#N/A</v></c>', { error: "#N/A" }],
    ["a date in words", '<c r="A1" t="d"><v>2024-01-31T12:00:00</v></c>', 45322.5],
    ["a cell that does not say where it is", "<c><v>7</v></c>", 7],
  ])("%s", async (_, inner, value) => {
    const strings = [
      "<t>plain</t>",
      '<r><rPr><b/></rPr><t>bold</t></r><r><t> and plain</t></r><rPh sb="0" eb="1"><t>aid</t></rPh>',
    ];
    expect((await cell(inner, { strings }))?.value).toEqual(value);
  });

  test("a prefix before every element does not matter", async () => {
    const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    const sheet = `<x:worksheet xmlns:x="${main}"><x:sheetData><x:row><x:c t="str"><x:f>"a"</x:f><x:v>a</x:v></x:c></x:row></x:sheetData></x:worksheet>`;
    const book = await read({ sheets: { S: "" }, parts: { "xl/worksheets/sheet1.xml": sheet } });
    expect(book.sheets[0] && cellAt(book.sheets[0], 0, 0)).toEqual({ value: "a", formula: '"a"' });
  });

  test("dates are numbers with the format that makes them dates", async () => {
    const styles =
      '<numFmts count="1"><numFmt numFmtId="164" formatCode="dd\\.mm\\.yyyy"/></numFmts><cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="164"/></cellXfs>';
    const book = await read({
      sheets: {
        S: '<sheetData><row r="1"><c r="A1" s="1"><v>45322</v></c><c r="B1" s="2"><v>45322</v></c></row></sheetData>',
      },
      styles,
    });
    const row = book.sheets[0]?.cells[0];
    expect(row?.[0]?.value).toBe(45322);
    expect(book.styles[row?.[0]?.style ?? ""]?.format).toBe("yyyy-mm-dd");
    expect(book.styles[row?.[1]?.style ?? ""]?.format).toBe("dd\\.mm\\.yyyy");
  });
});

describe("formulas", () => {
  test("those that share one are spelled out where they stand", async () => {
    const book = await read({
      sheets: {
        S: '<sheetData><row r="2"><c r="B2"><f t="shared" ref="B2:B4" si="0">_xldudf_WETEND_DOSE_TARGET(A2,$C$1)</f><v>1</v></c></row><row r="3"><c r="B3"><f t="shared" si="0"/><v>2</v></c></row><row r="4"><c r="B4"><f t="shared" si="0"/><v>3</v></c></row></sheetData>',
      },
    });
    const formulas = [1, 2, 3].map((row) => book.sheets[0]?.cells[row]?.[1]?.formula);
    expect(formulas).toEqual([
      "WETEND.DOSE.TARGET(A2,$C$1)",
      "WETEND.DOSE.TARGET(A3,$C$1)",
      "WETEND.DOSE.TARGET(A4,$C$1)",
    ]);
  });

  const array = (cm: string) =>
    `<sheetData><row r="1"><c r="A1"${cm}><f t="array" ref="A1:A3">_xldudf_WETEND_TRIAL_LADDER(0,8,2)</f><v>0</v></c></row><row r="2"><c r="A2"><v>4</v></c><c r="B2"><v>9</v></c></row><row r="3"><c r="A3"><v>8</v></c></row></sheetData>`;

  test("a dynamic array knows what it fills, and so do the cells", async () => {
    const book = await read({ sheets: { S: array(' cm="1"') }, dynamicArrays: true });
    const cells = book.sheets[0]?.cells;
    expect(cells?.[0]?.[0]).toEqual({
      value: 0,
      formula: "WETEND.TRIAL.LADDER(0,8,2)",
      spill: { rows: 3, columns: 1 },
    });
    expect(cells?.[1]?.[0]).toEqual({ value: 4, spilled: true });
    expect(cells?.[1]?.[1]).toEqual({ value: 9 });
  });

  test("an array formula of the older kind has a fixed extent", async () => {
    const book = await read({ sheets: { S: array("") } });
    expect(book.sheets[0]?.cells[0]?.[0]).toMatchObject({
      spill: { rows: 3, columns: 1 },
      fixed: true,
    });
  });

  test("a what-if table keeps its values and is no formula", async () => {
    const found = await cell(
      '<c r="A1"><f t="dataTable" ref="A1:A3" dt2D="0" dtr="0" r1="C1"/><v>5</v></c>',
    );
    expect(found).toEqual({ value: 5 });
  });
});

test("names, their sheets, and none of those that programs keep for themselves", async () => {
  const book = await read({
    sheets: { Log: "", Cost: "" },
    definedNames:
      '<definedName name="price">Cost!$B$4</definedName><definedName name="dose" localSheetId="1">_xldudf_WETEND_DOSE_TARGET(Log!$A$1,1)</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Log!$A$1:$C$9</definedName>',
  });
  expect(book.definedNames).toEqual([
    { name: "price", formula: "Cost!$B$4" },
    { name: "dose", formula: "WETEND.DOSE.TARGET(Log!$A$1,1)", sheet: "Cost" },
  ]);
});

test("a workbook of another library, with its table, names, dates, texts and widths", async () => {
  const foreign = new ExcelJS.Workbook();
  const sheet = foreign.addWorksheet("Mill log", {
    views: [{ state: "frozen", ySplit: 1, showGridLines: false }],
  });
  sheet.addTable({
    name: "Days",
    ref: "A1",
    headerRow: true,
    columns: [{ name: "Day" }, { name: "Dose, kg/t" }],
    rows: [
      [new Date(Date.UTC(2024, 2, 1)), 8.125],
      [new Date(Date.UTC(2024, 2, 2)), 7.5],
    ],
  });
  sheet.getCell("D1").value = { formula: "SUM(Days[Dose, kg/t])", result: 15.625 };
  sheet.getCell("D2").value = { richText: [{ text: "ri" }, { text: "ch", font: { bold: true } }] };
  sheet.getColumn(4).width = 22;
  sheet.mergeCells("F1:G2");
  foreign.addWorksheet("Hidden", { state: "hidden" });
  foreign.definedNames.add("'Mill log'!$D$1", "total");
  const bytes = new Uint8Array(await foreign.xlsx.writeBuffer());
  const { book } = await readWorkbook(bytes, names);
  const [log, hidden] = book.sheets;
  expect(log?.cells[1]?.[0]).toMatchObject({ value: 45352 });
  expect(book.styles[log?.cells[1]?.[0]?.style ?? ""]?.format).toBe("yyyy-mm-dd");
  expect(log?.cells[0]?.[3]).toMatchObject({ value: 15.625, formula: "SUM(Days[Dose, kg/t])" });
  expect(log?.cells[1]?.[3]?.value).toBe("rich");
  expect(log?.frozen).toEqual({ rows: 1, columns: 0 });
  expect(log?.gridlines).toBe(false);
  // The 22 of the file hold five pixels beside the digits of seven.
  expect(log?.columnWidths?.[3]).toBe(21.29);
  expect(log?.merged).toEqual([{ row: 0, column: 5, rows: 2, columns: 2 }]);
  expect(hidden?.hidden).toBe(true);
  expect(book.tables).toEqual([
    {
      name: "Days",
      sheet: "Mill log",
      area: { row: 0, column: 0, rows: 3, columns: 2 },
      columns: ["Day", "Dose, kg/t"],
      headerRow: true,
      totalsRow: false,
    },
  ]);
  expect(book.definedNames).toEqual([{ name: "total", formula: "'Mill log'!$D$1" }]);
});

test("lines below and through a text are read, and a border whose colour is not said is black", async () => {
  const { styles } = await read({
    sheets: { S: "<sheetData/>" },
    styles:
      '<fonts count="2"><font/><font><u/><strike/></font></fonts><borders count="2"><border/><border><top/><bottom style="double"/></border></borders><cellXfs count="2"><xf/><xf fontId="1" borderId="1"/></cellXfs>',
  });
  expect(styles.s1).toEqual({
    underline: true,
    strike: true,
    border: { bottom: "#000000" },
    borderLines: { bottom: "double" },
  });
});

test("where a text stands in its cell is read, the bottom as what is usual", async () => {
  const aligned = ["top", "center", "bottom"].map(
    (vertical) => `<xf><alignment vertical="${vertical}" wrapText="1"/></xf>`,
  );
  const { styles } = await read({
    sheets: { S: "<sheetData/>" },
    styles: `<cellXfs count="3">${aligned.join("")}</cellXfs>`,
  });
  expect(styles).toEqual({
    s0: { vertical: "top", wrap: true },
    s1: { vertical: "center", wrap: true },
    s2: { wrap: true },
  });
});

test("rows and columns that are hidden are read as such, with the size that they have when they are shown", async () => {
  const { sheets } = await read({
    sheets: {
      S: '<cols><col min="2" max="3" width="12" hidden="1"/></cols><sheetData><row r="4" ht="0" customHeight="1" hidden="1"/></sheetData>',
    },
  });
  expect(sheets[0]).toMatchObject({ hiddenRows: [3], rowHeights: {}, hiddenColumns: [1, 2] });
  expect(sheets[0]?.columnWidths).toEqual({ 1: 11.29, 2: 11.29 });
});
