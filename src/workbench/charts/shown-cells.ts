/** What charts need to know of cells, wherever these are. */
import { type Extent, isError, type Value } from "../../workbook/book";
import { drawnArea } from "../../workbook/layout/drawn-cells";
import type { CellsOf } from "../../workbook/layout/planned";
import { numberText } from "./number-text";

export interface ShownCell {
  readonly value: Value;
  /** The number format of the cell. */
  readonly format?: string | undefined;
}

export interface ShownCells {
  at(sheet: string, row: number, column: number): ShownCell;
  /** Whether its row or its column is hidden. */
  isHidden(sheet: string, row: number, column: number): boolean;
  /** How far the formula in this cell spills; undefined where it does not. */
  spillAt(sheet: string, row: number, column: number): Extent | undefined;
}

/** The cells that a series draws now, in the order in which it draws them; most charts leave out hidden ones. */
export function drawnCells(cells: ShownCells, of: CellsOf, drawsHidden = false): ShownCell[] {
  const { sheet, spillAt } = of;
  const extent = spillAt && cells.spillAt(sheet, spillAt.row, spillAt.column);
  const { row, column, rows, columns } = drawnArea(of, extent);
  return Array.from({ length: rows * columns }, (_, index) => {
    const place = [sheet, row + Math.floor(index / columns), column + (index % columns)] as const;
    return drawsHidden || !cells.isHidden(...place) ? [cells.at(...place)] : [];
  }).flat();
}

/** A number to draw; NaN where the cell holds none. */
export const numberIn = ({ value }: ShownCell) => (typeof value === "number" ? value : Number.NaN);

export const failsIn = ({ value }: ShownCell) => isError(value);

/** What stands in a cell, as an axis writes it. */
export function labelOf({ value, format }: ShownCell, own?: string): string {
  if (value === null) return "";
  if (isError(value)) return value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? numberText(value, own ?? format) : value;
}
