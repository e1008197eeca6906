import { describe, expect, test } from "vitest";
import { matchesOf, type SearchedCell } from "../../../src/workbench/finding/matches";

const cell = (
  sheet: number,
  row: number,
  column: number,
  text: string,
  more: Partial<SearchedCell> = {},
): SearchedCell => ({
  sheet,
  place: { sheetId: `sheet-${sheet}`, row, column },
  texts: [text],
  hidden: false,
  ...more,
});

const cells = [
  cell(1, 0, 0, "Web break"),
  cell(0, 9, 1, "break, 2 h"),
  cell(0, 9, 0, "BREAK"),
  cell(0, 2, 5, "0.33", { formula: "=C2/Break" }),
  cell(0, 4, 0, "a break", { hidden: true }),
];
const found = (words: string, inFormulas = false) => {
  const matches = matchesOf(words, cells, inFormulas);
  const places = matches.cells.map(({ sheet, place }) => [sheet, place.row, place.column]);
  return { places, hidden: matches.hidden };
};

describe("matchesOf", () => {
  test("finds words in any letters, sheet by sheet and row by row, and counts those that do not show", () => {
    expect(found(" break ")).toEqual({ places: [[0, 9, 0], [0, 9, 1], [1, 0, 0]], hidden: 1 }); // biome-ignore format: places
  });

  test("looks into formulas only when asked", () => {
    expect(found("c2/")).toEqual({ places: [], hidden: 0 });
    expect(found("c2/", true)).toEqual({ places: [[0, 2, 5]], hidden: 0 });
  });

  test("finds nothing where nothing is looked for", () => {
    expect(found("  ", true)).toEqual({ places: [], hidden: 0 });
  });
});
