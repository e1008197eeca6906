import { describe, expect, test } from "vitest";
import { fillOf, holdsHidden, rowsShown } from "../../../src/workbench/filtering/within-shown";

const isHidden = (row: number) => [0, 3, 4, 6].includes(row);
const range = (startRow: number, endRow: number) => ({
  startRow,
  endRow,
  startColumn: 1,
  endColumn: 2,
});

test.each([
  [range(1, 2), [1, 2], false],
  [range(2, 5), [2, 5], true],
  [range(3, 4), [], true],
])("of %o the rows %j show", (selected, rows, some) => {
  expect(rowsShown(selected, isHidden)).toEqual(rows);
  expect(holdsHidden(selected, isHidden)).toBe(some);
});

describe("filling down", () => {
  test.each([
    ["rows that all show go out from the first", range(1, 2), 1],
    ["hidden ones among them change nothing of that", range(2, 7), 2],
    ["a first one that is hidden gives nothing", range(3, 7), 5],
    ["a single one takes the one above it", range(2, 2), 1],
    ["or the next above it that shows", range(5, 5), 2],
    ["the single one of several that shows does, too", range(3, 5), 2],
  ])("%s", (_, selected, source) => {
    expect(fillOf(selected, isHidden)).toEqual({
      sourceRange: { ...selected, startRow: source, endRow: source },
      targetRange: { ...selected, startRow: source },
    });
  });

  test("has no source above the first row that shows", () => {
    expect(fillOf(range(1, 1), isHidden)).toBeUndefined();
  });
});
