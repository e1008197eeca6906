/**
 * What is typed into a cell that was never filled takes the look that its file gives to the whole row or
 * column, as in every spreadsheet. The look travels with its line in the grid, which does not paint it.
 */
import type { ICellData, Nullable, Styles, Worksheet } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/sheets";
import type { Grid } from "../grid/grid";
import type { CarriedByLine } from "./grid-book";

/** Ahead of all that the grid does with an entry, so that what it gave to the entry is known. */
const FIRST = 90;

export function takeLookOfLine({ injector }: Grid): void {
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler: (entry, { workbook, worksheet, row, col }, next) => {
      const cell = next(entry);
      if (!cell || worksheet.getCellRaw(row, col)) return cell;
      return withLook(cell, lookOfLine(worksheet, row, col), workbook.getStyles());
    },
  });
}

/** The look that a cell would take in which nothing has stood yet. */
export function lookOfLine(worksheet: Worksheet, row: number, column: number): Nullable<string> {
  const ofRow = worksheet.getRowManager().getRow(row)?.custom as CarriedByLine | undefined;
  return ofRow?.look ?? lookOfColumn(worksheet, column);
}

export const lookOfColumn = (worksheet: Worksheet, column: number): string | undefined =>
  (worksheet.getColumnManager().getColumn(column)?.custom as CarriedByLine | undefined)?.look;

/** What was typed as a date or a percentage keeps that form. */
function withLook<T extends ICellData>(cell: T, look: Nullable<string>, styles: Styles): T {
  const style = look && styles.get(look);
  return style ? { ...cell, s: { ...style, ...styles.getStyleByCell(cell) } } : cell;
}
