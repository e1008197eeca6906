/** Which cells hold words that are looked for, and in which order they are met. */
import type { CellPlace } from "../../engine/cell-place";
import { inOrder, type Position } from "../view/reading-order";

export interface SearchedCell extends Position {
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
