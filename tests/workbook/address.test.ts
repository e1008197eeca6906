import fc from "fast-check";
import { expect, test } from "vitest";
import {
  addressOf,
  areaAddress,
  columnIndex,
  columnName,
  parseAddress,
  parseArea,
  sheetPrefix,
} from "../../src/workbook/address";

test.each([
  [0, "A"],
  [25, "Z"],
  [26, "AA"],
  [701, "ZZ"],
  [702, "AAA"],
  [16383, "XFD"],
])("column %i is named %s, and back", (index, name) => {
  expect(columnName(index)).toBe(name);
  expect(columnIndex(name)).toBe(index);
});

test("every cell of a sheet is found again by its address", () => {
  fc.assert(
    fc.property(fc.nat(1_048_575), fc.nat(16_383), (row, column) => {
      expect(parseAddress(addressOf(row, column))).toEqual({ row, column });
    }),
  );
});

test("an area is read from either corner, with or without dollar signs", () => {
  const area = { row: 3, column: 1, rows: 6, columns: 2 };
  expect(parseArea("B4:C9")).toEqual(area);
  expect(parseArea("$C$9:$B$4")).toEqual(area);
  expect(areaAddress(area)).toBe("B4:C9");
  expect(areaAddress(parseArea("B4"))).toBe("B4");
});

test.each(["", "B", "4", "B0", "B4C", "Sheet1!B4"])("%j is refused as an address", (text) => {
  expect(() => parseAddress(text)).toThrow("is not the address of a cell");
});

test.each([
  ["Log", "Log!"],
  ["Mill log", "'Mill log'!"],
  ["Fen's log", "'Fen''s log'!"],
  ["Q1", "'Q1'!"],
  ["2026", "'2026'!"],
])("the sheet %s is written %s", (name, prefix) => {
  expect(sheetPrefix(name)).toBe(prefix);
});
