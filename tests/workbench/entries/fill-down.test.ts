import { expect, test } from "vitest";
import { lastRowBeside } from "../../../src/workbench/entries/fill-down";

/**
 * The sheet by its rows, something in each cell that is no dot; the source is the cells with an s. A filter hides
 * the rows that end with a minus.
 */
function filledTo(...rows: readonly string[]): number {
  const first = rows.findIndex((row) => row.includes("s"));
  const line = rows[first] ?? "";
  const source = {
    startRow: first,
    endRow: first,
    startColumn: line.indexOf("s"),
    endColumn: line.lastIndexOf("s"),
  };
  const isFilled = (row: number, column: number) => (rows[row]?.[column] ?? ".") !== ".";
  const isHidden = (row: number) => rows[row]?.endsWith("-") ?? false;
  return lastRowBeside(source, line.length - 1, isFilled, isHidden);
}

test.each<[string, readonly string[], number]>([
  ["the column before it", ["xs.", "x..", "x..", "..."], 2],
  ["the column behind it", [".sx", "..x", "..."], 1],
  ["a column behind a blank one", ["x..s", "x...", "x...", "...."], 2],
  ["a column beyond a blank one on the other side", ["s..x", "...x", "...x"], 2],
  ["the nearer of two", ["x.s.x", "x...x", "....x"], 1],
  ["the one that goes on, where another ends at its row", ["xs.x", "...x", "...x"], 2],
  ["as far as nothing stands in its way", ["xs.", "x..", "xo.", "x.."], 1],
  ["several columns", ["xss", "x..", "x.o"], 1],
  ["nothing, where nothing stands beside it", [".s.", "..."], 0],
  ["rows that show", ["xs.", "xo-", "x..", "..-", "x..", "x.-", "..."], 4],
  ["nothing, where only hidden rows stand beside it", ["xs.", "x.-", "..."], 0],
])("is filled as far as %s goes", (_, rows, last) => {
  expect(filledTo(...rows)).toBe(last);
});
