import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { Book, Sheet, Style } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { layoutBetween } from "../../../src/workbook/patch/layout-edits";
import { withLooks } from "../../../src/workbook/patch/look-edits";
import { patchWorkbook } from "../../../src/workbook/patch/patch-workbook";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { type RawWorkbook, rawWorkbook } from "../raw-workbook";

const names = functionNames(["DOSE.TARGET"]);

/** The file after a sheet came to stand otherwise, and a cell came to look otherwise. */
async function changed(
  raw: RawWorkbook,
  change: (sheet: Sheet) => Partial<Sheet>,
  styles: Book["styles"] = {},
) {
  const opened = await readWorkbook(rawWorkbook(raw), names);
  const { book } = opened;
  const [first, ...others] = book.sheets as [Sheet, ...Sheet[]];
  const after = {
    ...book,
    sheets: [{ ...first, ...change(first) }, ...others],
    styles: { ...book.styles, ...styles },
  };
  const looks = withLooks(new Map(), book, after);
  const layout = layoutBetween(book, after);
  const { bytes, stale } = await patchWorkbook(opened, looks, names, { layout });
  const again = (await readWorkbook(bytes, names)).book;
  const parts = unzipSync(bytes);
  const part = (path: string) => strFromU8(parts[path] as Uint8Array);
  return { xml: part("xl/worksheets/sheet1.xml"), part, again, after, stale };
}

const sheetOf = (xml: string) => /<worksheet[^>]*>(.*)<\/worksheet>/s.exec(xml)?.[1];

const only = async (inner: string, change: Partial<Sheet>) =>
  sheetOf((await changed({ sheets: { S: inner } }, () => change)).xml);

describe("columns of a file", () => {
  const data = "<sheetData/>";

  test.each<[string, string, Partial<Sheet>, string]>([
    [
      "get a width where the file says nothing of them",
      data,
      { columnWidths: { 1: 20 } },
      `<cols><col min="2" max="2" width="20.7143" customWidth="1"/></cols>${data}`,
    ],
    [
      "leave a run that has another width",
      `<cols><col min="1" max="4" width="12" style="3" customWidth="1"/></cols>${data}`,
      { columnWidths: { 0: 11.29, 1: 20, 2: 11.29, 3: 11.29 } },
      `<cols><col min="1" max="1" width="12" style="3" customWidth="1"/><col min="2" max="2" width="20.7143" style="3" customWidth="1"/><col min="3" max="4" width="12" style="3" customWidth="1"/></cols>${data}`,
    ],
    [
      "are hidden, with the width that they have when they are shown again",
      `<sheetFormatPr defaultColWidth="13" defaultRowHeight="15"/>${data}`,
      { hiddenColumns: [2] },
      `<sheetFormatPr defaultColWidth="13" defaultRowHeight="15"/><cols><col min="3" max="3" width="13" hidden="1"/></cols>${data}`,
    ],
    [
      "are shown again, also where they had no width",
      `<cols><col min="1" max="2" width="0" hidden="1"/></cols>${data}`,
      { hiddenColumns: [0] },
      `<cols><col min="1" max="1" width="0" hidden="1"/><col min="2" max="2" width="9.140625"/></cols>${data}`,
    ],
  ])("%s", async (_, inner, change, expected) => {
    expect(await only(inner, change)).toBe(expected);
  });

  test("keep another number format, beside what they look like, for cells in which nothing stands", async () => {
    const cols = '<cols><col min="1" max="2" width="12" style="1"/></cols>';
    const styles =
      '<fonts count="2"><font/><font><b/></font></fonts><cellXfs count="2"><xf/><xf fontId="1"/></cellXfs>';
    const look: Style = { bold: true, format: '0.0 "kg/t"' };
    const { xml, again } = await changed(
      { sheets: { S: cols + data }, styles },
      ({ columnStyles }) => ({ columnStyles: { ...columnStyles, 1: "fresh", 4: "fresh" } }),
      { fresh: look },
    );
    expect(sheetOf(xml)).toBe(
      `<cols><col min="1" max="1" width="12" style="1"/><col min="2" max="2" width="12" style="2"/><col min="5" max="5" width="9.140625" style="3"/></cols>${data}`,
    );
    const { columnStyles = {} } = again.sheets[0] as Sheet;
    const looks = Object.values(columnStyles).map((key) => again.styles[key]);
    expect(looks).toEqual([{ bold: true }, look, look]);
  });
});

describe("rows of a file", () => {
  test.each<[string, string, Partial<Sheet>, string]>([
    [
      "get a height, whether the file has them or not",
      '<row r="2" spans="1:1"><c r="A2"><v>1</v></c></row>',
      { rowHeights: { 0: 20, 1: 30, 4: 40 } },
      '<row r="1" ht="20" customHeight="1"></row><row r="2" spans="1:1" ht="30" customHeight="1"><c r="A2"><v>1</v></c></row><row r="5" ht="40" customHeight="1"></row>',
    ],
    [
      "get the usual height back",
      '<row r="2" ht="30" customHeight="1" s="4"/>',
      { rowHeights: {} },
      '<row r="2" s="4"/>',
    ],
    [
      "are hidden and shown",
      '<row r="1" hidden="1"/><row r="2"/>',
      { hiddenRows: [1] },
      '<row r="1"/><row r="2" hidden="1"/>',
    ],
  ])("%s", async (_, rows, change, expected) => {
    const all = (inner: string) => `<sheetData>${inner}</sheetData>`;
    expect(await only(all(rows), change)).toBe(all(expected));
  });
});

describe("what stays in view", () => {
  const view = (inner: string) =>
    `<sheetViews><sheetView showGridLines="0" workbookViewId="0">${inner}</sheetView></sheetViews><sheetData/>`;
  const pane =
    '<pane xSplit="1" ySplit="2" topLeftCell="B3" activePane="bottomRight" state="frozen"/>';

  test.each<[string, string, Partial<Sheet>, string]>([
    [
      "is frozen in the view that the file has",
      view(""),
      { frozen: { rows: 2, columns: 1 } },
      view(pane),
    ],
    [
      "is no longer frozen",
      view(`${pane}<selection pane="bottomRight"/><selection activeCell="B3"/>`),
      { frozen: { rows: 0, columns: 0 } },
      view('<selection activeCell="B3"/>'),
    ],
    [
      "is frozen where the file has no view",
      "<sheetData/>",
      { frozen: { rows: 1, columns: 0 } },
      '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetData/>',
    ],
  ])("%s", async (_, inner, change, expected) => {
    expect(await only(inner, change)).toBe(expected);
  });
});

test("merged cells stand where the schema has them", async () => {
  const [before, behind] = ['<sheetData/><autoFilter ref="A1:B2"/>', "<pageMargins/>"];
  const merged = [{ row: 1, column: 0, rows: 1, columns: 3 }];
  const cells = '<mergeCells count="1"><mergeCell ref="A2:C2"/></mergeCells>';
  expect(await only(before + behind, { merged })).toBe(before + cells + behind);
  expect(await only(before + cells + behind, { merged: [] })).toBe(before + behind);
});

test("a sheet is hidden, and is no longer the one in front", async () => {
  const raw = { sheets: { S: "<sheetData/>", T: "<sheetData/>" } };
  const { part, again } = await changed(raw, () => ({ hidden: true }));
  expect(again.sheets.map(({ hidden }) => hidden)).toEqual([true, undefined]);
  expect(part("xl/workbook.xml")).toContain(
    '<sheet name="S" sheetId="1" r:id="rId1" state="hidden"/>',
  );
  const workbook = part("xl/workbook.xml").replace(
    "<sheets>",
    '<bookViews><workbookView activeTab="0"/></bookViews><sheets>',
  );
  const shown = workbook.replace(' state="hidden"', "");
  const viewed = await changed({ ...raw, parts: { "xl/workbook.xml": shown } }, () => ({
    hidden: true,
  }));
  expect(viewed.part("xl/workbook.xml")).toContain('<workbookView activeTab="1"/>');
});

describe("the look of a cell", () => {
  const styles =
    '<fonts count="2"><font><sz val="11"/><name val="Georgia"/></font><font><b/><sz val="12"/><color theme="1"/><name val="Georgia"/></font></fonts>' +
    '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
    '<borders count="2"><border><left/><right/><top/><bottom/></border><border><left style="thick"/><right/><top/><bottom/></border></borders>' +
    '<cellStyleXfs count="1"><xf numFmtId="0"/></cellStyleXfs>' +
    '<cellXfs count="2"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="2" fontId="1" fillId="0" borderId="1" xfId="0"><alignment vertical="top"/><protection locked="0"/></xf></cellXfs>';
  const cell = '<c r="A1" s="1" t="s"><v>0</v></c>';
  const raw: RawWorkbook = {
    sheets: { S: `<sheetData><row r="1">${cell}</row></sheetData>` },
    strings: ["<r><t>rich</t></r><r><rPr><b/></rPr><t>er</t></r>"],
    styles,
  };
  const looking = (style: Style) =>
    changed(
      raw,
      ({ cells }) =>
        ({ cells: { 0: { 0: { ...cells[0]?.[0], style: "new" } } } }) as Partial<Sheet>,
      { new: style },
    );
  const lines: Style = { border: { left: "#000000" }, borderLines: { left: "thick" } };
  const was: Style = { format: "0.00", bold: true, size: 12, vertical: "top", ...lines };

  test.each<[string, Style, string]>([
    [
      "italics",
      { ...was, italic: true },
      '<font><b/><i/><sz val="12"/><color theme="1"/><name val="Georgia"/></font>',
    ],
    [
      "no bold type",
      { format: "0.00", size: 12, vertical: "top", ...lines },
      '<font><sz val="12"/><color theme="1"/><name val="Georgia"/></font>',
    ],
    [
      "an ink",
      { ...was, ink: "#aa0011" },
      '<font><b/><sz val="12"/><color rgb="FFAA0011"/><name val="Georgia"/></font>',
    ],
    [
      "a fill",
      { ...was, fill: "#aa0011" },
      '<fill><patternFill patternType="solid"><fgColor rgb="FFAA0011"/><bgColor indexed="64"/></patternFill></fill>',
    ],
    [
      "a line below",
      { ...was, border: { left: "#000000", bottom: "#000000" } },
      '<border><left style="thick"/><right/><top/><bottom style="thin"><color rgb="FF000000"/></bottom></border>',
    ],
    [
      "a format of its own",
      { ...was, format: "0.000" },
      '<numFmt numFmtId="164" formatCode="0.000"/>',
    ],
    [
      "an alignment",
      { ...was, align: "right", wrap: true },
      '<alignment vertical="top" horizontal="right" wrapText="1"/><protection locked="0"/>',
    ],
    [
      "the middle of its height",
      { ...was, vertical: "center" },
      '<alignment vertical="center"/><protection locked="0"/>',
    ],
  ])("gets %s, and keeps the rest of what its file says", async (_, style, entry) => {
    const { xml, part, again, stale } = await looking(style);
    expect(xml).toContain(cell.replace('s="1"', 's="2"'));
    expect(part("xl/styles.xml")).toContain(entry);
    expect(again.styles.s2).toEqual(style);
    expect(again.styles.s1).toEqual(was);
    expect(part("xl/styles.xml")).toContain('<protection locked="0"/></xf></cellXfs>');
    expect(stale).toEqual([]);
  });

  test("is cleared", async () => {
    expect((await looking({})).xml).toContain('<c r="A1" t="s"><v>0</v></c>');
  });

  test("comes to be where the file has neither cell nor styles", async () => {
    const cells = { 2: { 1: { value: null, style: "new" } } };
    const { xml, again } = await changed({ sheets: { S: "<sheetData/>" } }, () => ({ cells }), {
      new: { bold: true, format: "0.0" },
    });
    expect(xml).toContain('<sheetData><row r="3"><c r="B3" s="1"/></row></sheetData>');
    expect(again.styles.s1).toEqual({ bold: true, format: "0.0" });
  });
});
