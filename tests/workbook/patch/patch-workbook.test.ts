import { type FileEntry, Uint8ArrayReader, Uint8ArrayWriter, ZipReader } from "@zip.js/zip.js";
import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import type { Book, Cell, Cells } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { editsBetween } from "../../../src/workbook/patch/edits";
import { patchWorkbook } from "../../../src/workbook/patch/patch-workbook";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { type RawWorkbook, rawWorkbook } from "../raw-workbook";

const names = functionNames(["DOSE.TARGET"]);

/** The packed bytes of every entry of a zip archive, as they lie in it. */
async function packed(bytes: Uint8Array): Promise<Map<string, Uint8Array>> {
  const entries = await new ZipReader(new Uint8ArrayReader(bytes)).getEntries();
  const list = entries.filter((entry): entry is FileEntry => !entry.directory);
  const parts = new Map<string, Uint8Array>();
  for (const entry of list)
    parts.set(entry.filename, await entry.getData(new Uint8ArrayWriter(), { passThrough: true }));
  return parts;
}

const withCell = (book: Book, row: number, column: number, cell: Cell): Book => {
  const [first, ...others] = book.sheets;
  if (!first) return book;
  const { style } = first.cells[row]?.[column] ?? {};
  const look = style === undefined ? {} : { style };
  const cells: Cells = {
    ...first.cells,
    [row]: { ...first.cells[row], [column]: { ...look, ...cell } },
  };
  return { ...book, sheets: [{ ...first, cells }, ...others] };
};

async function patchFirst(bytes: Uint8Array, row: number, column: number, cell: Cell) {
  const opened = await readWorkbook(bytes, names);
  const after = withCell(opened.book, row, column, cell);
  return patchWorkbook(opened, editsBetween(opened.book, after), names);
}

describe("a patched workbook of another library", () => {
  async function foreign(): Promise<Uint8Array> {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet("Log");
    sheet.getCell("A1").value = 7;
    sheet.getCell("B1").value = { formula: "A1*2", result: 14 };
    sheet.getCell("B1").numFmt = "0.00";
    sheet.getCell("C1").value = "text";
    sheet.getCell("C1").note = "a comment";
    const image = workbook.addImage({ base64: "iVBORw0KGgo=", extension: "png" });
    sheet.addImage(image, "D2:E5");
    workbook.addWorksheet("Other").getCell("A1").value = "untouched";
    return new Uint8Array(await workbook.xlsx.writeBuffer());
  }

  test("keeps the packed bytes of every entry that no edit is about", async () => {
    const before = await foreign();
    const { bytes, stale } = await patchFirst(before, 0, 1, { value: 15, formula: "A1*2" });
    const [old, fresh] = [await packed(before), await packed(bytes)];
    expect([...fresh.keys()]).toEqual([...old.keys()]);
    const changed = [...old].filter(
      ([path, part]) => Buffer.compare(part, fresh.get(path) as Uint8Array) !== 0,
    );
    expect(changed.map(([path]) => path)).toEqual(["xl/worksheets/sheet1.xml"]);
    expect(old.size).toBeGreaterThan(10);
    expect(stale).toEqual([]);
  });

  test("opens in that library again with the new value and all the rest", async () => {
    const { bytes } = await patchFirst(await foreign(), 0, 1, { value: 15, formula: "A1*2" });
    const again = await new ExcelJS.Workbook().xlsx.load(bytes.slice().buffer as ArrayBuffer);
    const sheet = again.getWorksheet("Log");
    expect(sheet?.getCell("B1").value).toEqual({ formula: "A1*2", result: 15 });
    expect(sheet?.getCell("B1").numFmt).toBe("0.00");
    expect(sheet?.getCell("C1").note).toBe("a comment");
    expect(sheet?.getImages()).toHaveLength(1);
    expect(again.getWorksheet("Other")?.getCell("A1").value).toBe("untouched");
  });

  test("is the same file, byte for byte, where nothing changes", async () => {
    const before = await foreign();
    const opened = await readWorkbook(before, names);
    const { bytes } = await patchWorkbook(opened, new Map(), names);
    const [old, fresh] = [await packed(before), await packed(bytes)];
    for (const [path, part] of old)
      expect(Buffer.compare(part, fresh.get(path) as Uint8Array)).toBe(0);
  });
});

describe("looks of cells that changed places", () => {
  const styles =
    '<cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="2"/><xf numFmtId="9"/></cellXfs>';
  const bytes = rawWorkbook({
    sheets: {
      S: '<sheetData><row r="1"><c r="A1" s="1"><v>1</v></c><c r="B1" s="2"/></row><row r="2"><c r="A2"><v>2</v></c></row></sheetData>',
    },
    styles,
  });

  async function patched(cells: Cells): Promise<string> {
    const opened = await readWorkbook(bytes, names);
    const [first] = opened.book.sheets;
    const sheets = first ? [{ ...first, cells }] : [];
    const edits = editsBetween(opened.book, { ...opened.book, sheets });
    const { file } = await readWorkbook((await patchWorkbook(opened, edits, names)).bytes, names);
    return (await file.text("xl/worksheets/sheet1.xml")).replace(/^.*<sheetData>/s, "");
  }

  test("go with them, and leave nothing where they were", async () => {
    const cells = { 0: { 0: { value: 2 } }, 1: { 0: { value: 1, style: "s1" }, 1: { value: null, style: "s2" } } }; // biome-ignore format: a sheet
    expect(await patched(cells)).toContain(
      '<row r="1"><c r="A1"><v>2</v></c></row><row r="2"><c r="A2" s="1"><v>1</v></c><c r="B2" s="2"/></row>',
    );
  });

  test("stay as they were where the new one is none of the file", async () => {
    const cells = { 0: { 0: { value: 7, style: "look-0" }, 1: { value: null, style: "s2" } }, 1: { 0: { value: 2 } } }; // biome-ignore format: a sheet
    expect(await patched(cells)).toContain(
      '<row r="1"><c r="A1" s="1"><v>7</v></c><c r="B1" s="2"/></row><row r="2"><c r="A2"><v>2</v></c></row>',
    );
  });
});

describe("what the cells leave behind", () => {
  const chain = (cells: string): RawWorkbook => ({
    sheets: {
      S: '<sheetData><row r="1"><c r="A1"><f>1+1</f><v>2</v></c><c r="B1"><f>2+2</f><v>4</v></c></row></sheetData>',
    },
    related: { calcChain: "calcChain.xml" },
    parts: {
      "xl/calcChain.xml": `<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${cells}</calcChain>`,
    },
  });
  const both = '<c r="A1" i="1"/><c r="B1"/>';

  test("a chain of calculation that names a formula which is gone goes with it", async () => {
    const { bytes } = await patchFirst(rawWorkbook(chain(both)), 0, 1, { value: 4 });
    const { file } = await readWorkbook(bytes, names);
    expect(file.has("xl/calcChain.xml")).toBe(false);
    expect(await file.text("xl/_rels/workbook.xml.rels")).not.toContain("calcChain");
  });

  test("a chain that names only formulas stays", async () => {
    const bytes = rawWorkbook(chain(both));
    const patched = await patchFirst(bytes, 0, 1, { value: 5, formula: "2+2" });
    expect((await packed(patched.bytes)).get("xl/calcChain.xml")).toEqual(
      (await packed(bytes)).get("xl/calcChain.xml"),
    );
  });

  test.each([
    ["xl/pivotCache/pivotCacheDefinition1.xml", "Pivot tables"],
    ["xl/charts/chart1.xml", "Charts keep the old values"],
    ["_xmlsignatures/sig1.xml", "The digital signature"],
  ])("%s goes stale, and it is said", async (path, sentence) => {
    const bytes = rawWorkbook({
      sheets: { S: '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>' },
      parts: { [path]: "<x/>" },
    });
    const { stale } = await patchFirst(bytes, 0, 0, { value: 2 });
    expect(stale).toHaveLength(1);
    expect(stale[0]).toContain(sentence);
  });
});

test("a formula that spills is written as a dynamic array, also into a workbook that had none", async () => {
  const bytes = rawWorkbook({ sheets: { S: "<sheetData/>" } });
  const formula = "WETEND.DOSE.TARGET(A1:A3,0.8)";
  const cell: Cell = { value: 1, formula, spill: { rows: 3, columns: 1 } };
  const patched = await patchFirst(bytes, 0, 1, cell);
  const { book, file } = await readWorkbook(patched.bytes, names);
  expect(book.sheets[0]?.cells[0]?.[1]).toEqual(cell);
  expect(await file.text("[Content_Types].xml")).toContain(
    'PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"',
  );
});
