import { expect, test } from "vitest";
import { areaAddress, parseArea } from "../../src/workbook/address";
import { holdsCell, hull, overlap, without } from "../../src/workbook/areas";

test.each([
  ["its first cell", 1, 1, true],
  ["its last cell", 3, 2, true],
  ["the cell above it", 0, 1, false],
  ["the cell below it", 4, 1, false],
  ["the cell before it", 2, 0, false],
  ["the cell behind it", 2, 3, false],
])("an area holds or does not hold %s", (_, row, column, expected) => {
  expect(holdsCell(parseArea("B2:C4"), row, column)).toBe(expected);
});

test.each([
  ["B2:C4", "C4:D5", true],
  ["B2:C4", "A1:Z9", true],
  ["B2:C4", "D2:E4", false],
  ["B2:C4", "B5:C6", false],
])("%s and %s have a cell in common, or none, whichever is asked first", (one, other, expected) => {
  expect(overlap(parseArea(one), parseArea(other))).toBe(expected);
  expect(overlap(parseArea(other), parseArea(one))).toBe(expected);
});

test.each([
  ["B2:D5", "C3:C4", ["B2:D2", "B3:B4", "D3:D4", "B5:D5"]],
  ["B2:D5", "A1:Z3", ["B4:D5"]],
  ["B2:D5", "B2:D5", []],
  ["B2:D5", "E6", ["B2:D5"]],
])("of %s without %s is left what the other does not have", (one, other, left) => {
  expect(without(parseArea(one), parseArea(other)).map(areaAddress)).toEqual(left);
});

test("the hull of many areas holds them all, however many a log brings", () => {
  expect(hull([parseArea("C3"), parseArea("A5:B6"), parseArea("D1")])).toEqual(parseArea("A1:D6"));
  const column = Array.from({ length: 300_000 }, (_, row) => ({
    row,
    column: 2,
    rows: 1,
    columns: 1,
  }));
  expect(hull([parseArea("A1"), ...column])).toEqual(parseArea("A1:C300000"));
});
