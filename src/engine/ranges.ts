/** The grid's ranges and ours: the grid names the last row and column, we count them. */
import type { IRange } from "@univerjs/core";
import type { Area } from "../workbook/book";

export const rangeOf = ({ row, column, rows, columns }: Area): IRange => ({
  startRow: row,
  startColumn: column,
  endRow: row + rows - 1,
  endColumn: column + columns - 1,
});

export const areaOf = ({ startRow, startColumn, endRow, endColumn }: IRange): Area => ({
  row: startRow,
  column: startColumn,
  rows: endRow - startRow + 1,
  columns: endColumn - startColumn + 1,
});

/** Whether a range holds a cell. */
export const holdsCell = (
  { startRow, startColumn, endRow, endColumn }: IRange,
  row: number,
  column: number,
): boolean => row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;
