import { expect, test } from "vitest";
import { mendIndex } from "../../../src/engine/mends/index-of-columns";
import { packages } from "../../../src/engine/node";

mendIndex(packages.formula);
const index = packages.formula.CELL_INVERTED_INDEX_CACHE;

test("a row is found by the value that it has now, and no longer by the one before", () => {
  index.clear();
  index.set("book", "sheet", 0, "Fibre", 3, true);
  index.set("book", "sheet", 0, 7, 4, true);
  index.set("book", "sheet", 0, "7", 6, true);
  index.set("book", "sheet", 0, 0, 7, true);
  index.set("book", "sheet", 0, null, 5, true);
  index.set("book", "sheet", 0, "fines", 3, true);
  const rowsOf = (value: string | number | null) =>
    index.getCellPositions("book", "sheet", 0, value, [[0, 9]])?.matchingRows;
  expect(rowsOf("fibre")).toEqual([]);
  expect(rowsOf("FINES")).toEqual([3]);
  expect(rowsOf(7)).toEqual([4]);
  expect(rowsOf("7")).toEqual([6]);
  expect(rowsOf(0)).toEqual([7]);
  expect(rowsOf(null)).toEqual([7]);
  expect(index.getCellPositions("book", "sheet", 0, "#N/A", [[0, 9]])?.errorType).toBe("#N/A");
  expect(index.getCellPositions("book", "sheet", 1, 7, [[0, 9]])).toBeUndefined();
  index.clear();
  expect(rowsOf(7)).toBeUndefined();
});

test("half a million computed values go into one column at once", () => {
  index.clear();
  for (let row = 0; row < 500_000; row++) index.set("book", "sheet", 0, row + 0.5, row, true);
  expect(
    index.getCellPositions("book", "sheet", 0, 499_999.5, [[0, 600_000]])?.matchingRows,
  ).toEqual([499_999]);
  index.clear();
});
