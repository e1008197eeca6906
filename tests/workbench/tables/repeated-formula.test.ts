import { expect, test } from "vitest";
import { repeatedAt } from "../../../src/workbench/tables/repeated-formula";

/** Of the rows from 2 on, as a sheet counts them, for one that is put in before another. */
function repeated(at: number, ...formulas: readonly string[]) {
  const body = { row: 1, rows: formulas.length };
  const found = repeatedAt(at - 1, body, (row) => formulas[row - 1] || undefined);
  return found && { rows: found.rows.map((row) => row + 1), source: found.source + 1 };
}

test("a column that holds one formula in every row repeats it at its beginning, within and at its end", () => {
  const column = ["A2*$F$1", "A3*$F$1", "a4*$F$1"] as const;
  expect(repeated(2, ...column)).toEqual({ rows: [2, 3, 4], source: 4 });
  expect(repeated(4, ...column)).toEqual({ rows: [2, 3, 4], source: 2 });
  expect(repeated(5, ...column)).toEqual({ rows: [2, 3, 4], source: 2 });
  expect(repeated(3, "A2*2")).toEqual({ rows: [2], source: 2 });
});

test("a value typed over it, and another formula in the first row, change nothing", () => {
  expect(repeated(4, "A2*2", "A3*2", "", "A5*2")?.rows).toEqual([2, 3, 5]);
  expect(repeated(5, "A2*2", "A3*2", "")?.rows).toEqual([2, 3]);
  expect(repeated(5, "B2", "C2+B3", "C3+B4")?.rows).toEqual([3, 4]);
});

test("nothing is repeated where formulas differ beside the place, nor what few rows hold", () => {
  expect(repeated(3, "A2*2", "A3*3", "A4*2", "A5*2")).toBeUndefined();
  expect(repeated(3, "A2*2", "A3*3", "A4*4")).toBeUndefined();
  expect(repeated(3, "B2", "C2+B3", "C3+B4")).toBeUndefined();
  expect(repeated(4, "", "", "A4*2", "A5*2")).toBeUndefined();
  expect(repeated(4, "", "", "")).toBeUndefined();
  expect(repeated(2)).toBeUndefined();
});
