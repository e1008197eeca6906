import { describe, expect, test } from "vitest";
import { farFrom, type SeenLines } from "../../../src/workbench/keys/far-moves";

/** Twenty rows of 10, of which rows 7 and 8 are hidden, and six columns, of which the first is hidden. */
const lines: SeenLines = {
  rowEnds: Array.from({ length: 20 }, (_, row) => 10 * (row < 6 ? row + 1 : Math.max(6, row - 1))),
  columnEnds: [0, 30, 60, 90, 120, 150],
  seen: 50,
  frozen: { row: 2, column: 0 },
  lastFilled: () =>
    new Map([
      [0, 1],
      [9, 4],
      [15, 2],
    ]),
};
const far = (row: number, column: number, move: Parameters<typeof farFrom>[1], given = lines) =>
  Object.values(farFrom({ row, column }, move, given));

describe("farFrom", () => {
  test("goes on and back by as many rows as a page shows, without those that are hidden, and stops at the ends", () => {
    expect(far(3, 2, "pageDown")).toEqual([10, 2]);
    expect(far(10, 2, "pageUp")).toEqual([3, 2]);
    expect(far(18, 2, "pageDown")).toEqual([19, 2]);
    expect(far(2, 2, "pageUp")).toEqual([0, 2]);
  });

  test("goes to the ends of a row: its first column that shows, or the first that is not frozen, and the last filled one", () => {
    expect(far(9, 3, "rowStart")).toEqual([9, 1]);
    const frozen = { ...lines, frozen: { row: 0, column: 2 } };
    expect(far(9, 3, "rowStart", frozen)).toEqual([9, 2]);
    expect(far(9, 2, "rowStart", frozen)).toEqual([9, 1]);
    expect(far(9, 0, "rowEnd")).toEqual([9, 4]);
    expect(far(8, 3, "rowEnd")).toEqual([8, 3]);
  });

  test("goes to the first cell that is not frozen, and to the last one that a filled cell is above or beside", () => {
    expect(far(9, 3, "start")).toEqual([2, 1]);
    expect(far(0, 0, "end")).toEqual([15, 4]);
    expect(far(3, 3, "end", { ...lines, lastFilled: () => new Map() })).toEqual([0, 0]);
  });
});
