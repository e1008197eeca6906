import { expect, test } from "vitest";
import { parseArea } from "../../src/workbook/address";
import type { Table } from "../../src/workbook/book";
import {
  type Criterion,
  type Filter,
  filteredArea,
  filteredRows,
  unsaidCriteria,
} from "../../src/workbook/filter";

const over = (area: string, ...criteria: Criterion[]): Filter => ({
  area: parseArea(area),
  columns: criteria.map((criterion, column) => ({ column, criterion })),
});
const blank: Criterion = { kind: "values", texts: [], dates: [], blank: true };
const colour: Criterion = { kind: "other", xml: "" };
const highest: Criterion = { kind: "other", xml: '<top10 val="3"/>' };
const table: Table = {
  name: "Runs",
  sheet: "S",
  area: parseArea("D1:E6"),
  columns: ["Run", "Dose"],
  headerRow: true,
  totalsRow: true,
  filter: over("D1:E5", highest, colour),
};

test("hidden rows are the filter's where one is set over them, its heads and totals are not", () => {
  const sheet = { name: "S", cells: {}, hiddenRows: [0, 2, 4, 5, 8] };
  expect([...filteredRows(sheet, [table])]).toEqual([2, 4]);
  expect([...filteredRows({ ...sheet, filter: over("A4:B10", blank) }, [])]).toEqual([4, 5, 8]);
  expect([...filteredRows({ ...sheet, filter: over("A4:B10") }, [])]).toEqual([]);
  expect(filteredArea(table)).toEqual(parseArea("D1:E5"));
});

test("what names a look of its own file cannot be said in another one", () => {
  const sheets = [{ name: "S", filter: over("A1:B9", colour, blank) }];
  expect(unsaidCriteria({ sheets, tables: [table] })).toBe(2);
  expect(unsaidCriteria({ sheets: [], tables: [table] })).toBe(0);
});
