import { describe, expect, test } from "vitest";
import { type Direction, inOrder } from "../../../src/workbench/sorting/order";
import type { Value } from "../../../src/workbook/book";

const sorted = (values: readonly Value[], direction: Direction) =>
  inOrder([...values.keys()], (row) => values[row] ?? null, direction).map((row) => values[row]);

const failed = { error: "#N/A" };

describe("values of all kinds", () => {
  const values = [null, true, "b", failed, 3, "", "10", "A", false, -2, "9", 45_000.5];

  test("stand as numbers, texts, truth values, errors, blanks", () => {
    expect(sorted(values, "ascending")).toEqual([
      -2,
      3,
      45_000.5,
      "9",
      "10",
      "A",
      "b",
      false,
      true,
      failed,
      null,
      "",
    ]);
  });

  test("stand the other way round, but for the blanks", () => {
    expect(sorted(values, "descending")).toEqual([
      failed,
      true,
      false,
      "b",
      "A",
      "10",
      "9",
      45_000.5,
      3,
      -2,
      null,
      "",
    ]);
  });
});

test("capitals are small letters, and numbers in texts count as numbers", () => {
  expect(sorted(["run 10", "Run 9", "RUN 1", "alum"], "ascending")).toEqual([
    "alum",
    "RUN 1",
    "Run 9",
    "run 10",
  ]);
});

test.each<Direction>(["ascending", "descending"])(
  "rows that are equal keep their order: %s",
  (direction) => {
    const values = ["b", "B", 1, 1, null, "", failed, { error: "#REF!" }];
    const rows = inOrder([...values.keys()], (row) => values[row] ?? null, direction);
    for (const [one, other] of [
      [0, 1],
      [2, 3],
      [4, 5],
      [6, 7],
    ] as const)
      expect(rows.indexOf(one)).toBeLessThan(rows.indexOf(other));
  },
);
