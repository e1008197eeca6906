/**
 * A value that a formula spilled, in a cell without a number format: it shows in the one that its line has for
 * such cells, in that of the cell that it was taken from, or else in that of the formula's cell above it. Other
 * columns may hold other things.
 */
import {
  InterceptorEffectEnum,
  type IStyleData,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { spilledRanges } from "../../engine/read-cells";
import { lookOfLine } from "../book/look-of-line";
import type { Grid } from "../grid/grid";

/** After the grid has put the spilled value into the cell, before it writes the value in its format. */
const BETWEEN = 50;

export function formatSpills({ injector }: Grid): void {
  const model = injector.get(FormulaDataModel);
  const cellAbove = (worksheet: Worksheet, row: number, column: number) => {
    const around = spilledRanges(model, worksheet).find(
      ({ startRow, startColumn, endRow }) =>
        column === startColumn && row >= startRow && row <= endRow,
    );
    return around && worksheet.getCellRaw(around.startRow, column);
  };
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: BETWEEN,
    effect: InterceptorEffectEnum.Style,
    handler: (cell, { unitId, subUnitId, row, col, workbook, worksheet }, next) => {
      const spilled = model.getArrayFormulaCellData()[unitId]?.[subUnitId]?.[row]?.[col];
      if (!cell || !spilled) return next(cell);
      const styles = workbook.getStyles();
      const own: Nullable<IStyleData> = styles.getStyleByCell(cell);
      if (own?.n) return next(cell);
      const ofLine = own ? undefined : styles.get(lookOfLine(worksheet, row, col))?.n;
      const taken = typeof spilled.s === "object" ? spilled.s?.n : undefined;
      const n = ofLine ?? taken ?? styles.getStyleByCell(cellAbove(worksheet, row, col))?.n;
      return next(n ? { ...cell, s: { ...own, n } } : cell);
    },
  });
}
