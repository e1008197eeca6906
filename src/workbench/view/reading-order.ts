/** Cells in the order in which they are read: sheet by sheet, row by row. */
import type { CellPlace } from "../../engine/cell-place";
import { selectedPlace } from "../entries/entry-check";
import { type Grid, workbookOf } from "../grid/grid";

export interface Position {
  /** By the order of the sheets, not of their ids. */
  readonly sheet: number;
  readonly place: Pick<CellPlace, "row" | "column">;
}

export const inOrder = (one: Position, other: Position): number =>
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

/** Gives where a cell stands in that order. */
export function positions(
  grid: Grid,
): <Place extends CellPlace>(place: Place) => Position & { readonly place: Place } {
  const sheets = workbookOf(grid)?.getSheets() ?? [];
  const ids = sheets.map((sheet) => sheet.getSheetId());
  return (place) => ({ sheet: ids.indexOf(place.sheetId), place });
}

/** The cell that is selected; before all of its sheet where none is. */
export function here(grid: Grid): Position {
  const sheetId = workbookOf(grid)?.getActiveSheet()?.getSheetId() ?? "";
  return positions(grid)(selectedPlace(grid) ?? { sheetId, row: 0, column: -1 });
}
