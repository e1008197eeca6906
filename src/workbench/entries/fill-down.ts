/**
 * A double press on the handle of the selected cells fills them down as far as what stands beside them goes:
 * the nearest column on either side in which something stands there, also where a blank one lies between, or
 * where a formula filled it. The grid looks at the next column alone, and at its own values.
 */
import type { IRange } from "@univerjs/core";
import { AutoFillUIController } from "@univerjs/sheets-ui";
import type { IsHidden } from "../filtering/within-shown";
import { type Grid, workbookOf } from "../grid/grid";
import { valueAt } from "../grid/seen-cells";

type IsFilled = (row: number, column: number) => boolean;

/**
 * The last row to fill; that of the source where nothing stands beside it, or something below it. Rows that a
 * filter hides are passed over.
 */
export function lastRowBeside(
  { startColumn, endRow, endColumn }: IRange,
  lastColumn: number,
  isFilled: IsFilled,
  isHidden: IsHidden,
): number {
  const nextShown = (row: number): number => {
    let next = row + 1;
    while (isHidden(next)) next++;
    return next;
  };
  const below = nextShown(endRow);
  const furthest = Math.max(startColumn, lastColumn - endColumn);
  for (let away = 1; away <= furthest; away++)
    for (const column of [startColumn - away, endColumn + away]) {
      if (column < 0 || column > lastColumn || !isFilled(below, column)) continue;
      let row = endRow;
      for (
        let next = below;
        isFilled(next, column) && !holds(next, startColumn, endColumn, isFilled);
        next = nextShown(row)
      )
        row = next;
      return row;
    }
  return endRow;
}

function holds(row: number, from: number, to: number, isFilled: IsFilled): boolean {
  for (let column = from; column <= to; column++) if (isFilled(row, column)) return true;
  return false;
}

export function fillDownBesideBlanks(grid: Grid): void {
  Object.assign(AutoFillUIController.prototype, {
    _detectFillRange(source: IRange): IRange {
      const sheet = workbookOf(grid)?.getActiveSheet();
      if (!sheet) return source;
      const isFilled = (row: number, column: number) => valueAt(grid, sheet, row, column) !== null;
      const lastColumn = sheet.getColumnCount() - 1;
      const isHidden = (row: number) => sheet.getRowFiltered(row);
      return { ...source, endRow: lastRowBeside(source, lastColumn, isFilled, isHidden) };
    },
  });
}
