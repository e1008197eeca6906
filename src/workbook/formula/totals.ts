import { holdsCell, overlap } from "../areas";
import type { Area, Book } from "../book";
import { regionsOf } from "./regions";
import { sheetRows } from "./shared";

export interface FormulaPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Whether a formula computes from several of the rows above it, as a total does; whole columns are among them. */
export function isTotalOf(
  above: Area,
  formula: string,
  { sheet, row, column }: FormulaPlace,
  book: Book,
): boolean {
  return regionsOf(formula, sheet, book).some(({ sheet: its, area }) => {
    if (its !== sheet || area.rows < 2 || !overlap(area, above)) return false;
    const endsAbove = area.row + area.rows <= row;
    return endsAbove || (area.rows === sheetRows && holdsCell(area, row, column));
  });
}
