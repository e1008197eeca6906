import { expect, test } from "vitest";
import { gridRules } from "../../../src/workbench/book/grid-rules";
import type { Area, Book, Cell } from "../../../src/workbook/book";
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
