/** Which cells hold words that are looked for, and in which order they are met. */
import type { CellPlace } from "../../engine/cell-place";

export interface SearchedCell {
  /** By the order of the sheets, not of their ids. */
  readonly sheet: number;
  readonly place: CellPlace;
  /** What it shows, and, where that is shortened, its number in full. */
  readonly texts: readonly string[];
  readonly formula?: string;
  /** Its row or column is not shown. */
  readonly hidden: boolean;
}

export interface Matches {
  /** Sheet by sheet, row by row. */
  readonly cells: readonly SearchedCell[];
  /** How many more there are that no one can see. */
  readonly hidden: number;
}

/** Small and capital letters are alike. Nothing is found where nothing is looked for. */
export function matchesOf(
  words: string,
  cells: Iterable<SearchedCell>,
  inFormulas: boolean,
): Matches {
  const sought = words.trim().toLowerCase();
  if (sought === "") return { cells: [], hidden: 0 };
  const holds = (text: string) => text.toLowerCase().includes(sought);
  const found = [...cells].filter(
    ({ texts, formula }) =>
      texts.some(holds) || (inFormulas && formula !== undefined && holds(formula)),
  );
  return {
    cells: found.filter(({ hidden }) => !hidden).sort(inOrder),
    hidden: found.filter(({ hidden }) => hidden).length,
  };
}

type Position = Pick<SearchedCell, "sheet"> & {
  readonly place: Pick<CellPlace, "row" | "column">;
};

const inOrder = (one: Position, other: Position): number =>
  one.sheet - other.sheet ||
  one.place.row - other.place.row ||
  one.place.column - other.place.column;

/** The place in the list of the one behind where a person is, or before it; round from the end to the start. */
export function nextOf(
  cells: readonly Position[],
  here: Position,
  direction: "next" | "previous",
): number {
  if (direction === "next")
    return Math.max(
      0,
      cells.findIndex((cell) => inOrder(cell, here) > 0),
    );
  const before = cells.filter((cell) => inOrder(cell, here) < 0).length;
  return before > 0 ? before - 1 : cells.length - 1;
}
