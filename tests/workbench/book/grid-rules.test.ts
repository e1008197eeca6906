import { describe, expect, test } from "vitest";
import { areaOf } from "../../../src/engine/ranges";
import { gridRules } from "../../../src/workbench/book/grid-rules";
import { areaAddress, parseArea } from "../../../src/workbook/address";
import type { Area, Book, Cell, Sheet } from "../../../src/workbook/book";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { plans } from "../../../templates/plans";

const wholeColumns = (columns: number): Area => ({ row: 0, column: 0, rows: 1_048_576, columns });

function bookOf(rows: number, areas: readonly Area[]): Book {
  const cells: Record<number, Record<number, Cell>> = {};
  for (let row = 0; row < rows; row++) cells[row] = { 0: { value: row } };
  const formats = areas.map((area) => ({ area, formula: "A1>1", look: { bold: true } }));
  const entryRules = areas.map((area) => ({
    area,
    type: "list" as const,
    from: "$B$1",
    blank: true,
  }));
  return {
    sheets: [{ name: "S", cells, formats, entryRules }],
    tables: [],
    definedNames: [],
    styles: {},
  };
}

test("a formula over whole columns is computed as far as the sheet is filled, and some rows more", () => {
  const [rules] = gridRules(bookOf(40, [wholeColumns(2)]));
  expect(rules?.formats[0]?.ranges).toEqual([
    { startRow: 0, endRow: 139, startColumn: 0, endColumn: 1 },
  ]);
});

test("what would cost too much is left out, and what comes behind it is not", () => {
  const small = { row: 0, column: 0, rows: 3, columns: 1 };
  const [rules] = gridRules(bookOf(20_000, [wholeColumns(1), small]));
  expect(rules?.formats.map(({ ranges }) => ranges[0]?.endRow)).toEqual([2]);
});

describe("a rule that compares its cells with one another", () => {
  const average = (areas: readonly string[], index = 0) =>
    areas.map((area) => ({
      area: parseArea(area),
      ranking: { attributes: { type: "aboveAverage" }, inner: "" },
      look: { bold: true },
      inFile: { sheet: "xl/worksheets/sheet1.xml", index },
    }));
  const inGrid = (formats: Sheet["formats"], rows = 20) => {
    const [sheet] = bookOf(rows, []).sheets;
    const book = { ...bookOf(rows, []), sheets: [{ ...sheet, formats } as Sheet] };
    return gridRules(book)[0]?.formats.map(({ ranges }) =>
      ranges.map((range) => areaAddress(areaOf(range))),
    );
  };

  test("is one over all its areas, and another rule is another one", () => {
    const formats = [...average(["A1:A5", "C1:C5"]), ...average(["C1:C2"], 1)];
    expect(inGrid(formats)).toEqual([["A1:A5", "C1:C5"], ["C1:C2"]]);
  });

  test("counts each cell once, where its areas have some in common", () => {
    expect(inGrid(average(["A1:A5", "A4:B6"]))).toEqual([["A1:A5", "B4:B5", "A6:B6"]]);
  });

  test("is left out as a whole, where all its cells cost too much", () => {
    const formats = [...average(["A1:A9000", "C1:C9000"]), ...average(["E1:E9000"], 1)];
    expect(inGrid(formats, 9000)).toEqual([["E1:E9000"]]);
  });
});

test("a list costs nothing for each of its cells: it goes as far as the sheet does in the grid", () => {
  const [rules] = gridRules(bookOf(20_000, [wholeColumns(1)]));
  expect(rules?.entryRules[0]?.ranges[0]?.endRow).toBe(20_999);
});

test.each(plans)("all rules of $id are in the grid", (plan) => {
  const planned = layOut(plan);
  const rules = gridRules(planned);
  planned.sheets.forEach((sheet, index) => {
    expect(rules[index]?.formats).toHaveLength(sheet.formats.length);
    expect(rules[index]?.entryRules).toHaveLength(sheet.entryRules.length);
  });
});
