import { describe, expect, test } from "vitest";
import { openEngine } from "../../../src/engine/node";
import { type Direction, inOrder } from "../../../src/workbench/sorting/order";
import type { Value } from "../../../src/workbook/book";
import { probe } from "../../engine/probe";
import { book, sheet } from "../../engine/sheet";

const engine = openEngine(probe);

const sorted = (values: readonly Value[], direction: Direction) =>
  inOrder([...values.keys()], (row) => values[row] ?? null, direction).map((row) => values[row]);

const failed = { error: "#N/A" };

describe("values of all kinds", () => {
  const values = [null, true, "b", failed, 3, "", "9", "A", false, -2, "10", 45_000.5];

  test("stand as numbers, texts, truth values, errors, blanks", () => {
    expect(sorted(values, "ascending")).toEqual([
      -2,
      3,
      45_000.5,
      "10",
      "9",
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
      "9",
      "10",
      45_000.5,
      3,
      -2,
      null,
      "",
    ]);
  });
});

test("texts stand as SORT puts them: capitals are small letters, numbers in texts are letters", async () => {
  const values = [
    "run 10",
    "Run 9",
    "RUN 1",
    "öl",
    "oxygen",
    "alum",
    "zinc",
    "Run_1",
    "run-1",
    "Ol",
  ];
  const column = Object.fromEntries(values.map((value, at) => [`A${at + 1}`, value]));
  const { book: computed } = await engine.recalculate(
    book([sheet("S", { ...column, B1: `=SORT(A1:A${values.length})` })]),
  );
  const bySort = values.map((_, row) => computed.sheets[0]?.cells[row]?.[1]?.value);
  expect(sorted(values, "ascending")).toEqual(bySort);
  expect(bySort.slice(0, 4)).toEqual(["alum", "Ol", "öl", "oxygen"]);
  expect(bySort.slice(4, 7)).toEqual(["RUN 1", "run 10", "Run 9"]);
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
