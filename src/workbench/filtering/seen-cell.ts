import { numfmt, type Worksheet } from "@univerjs/core";
import { labelOf } from "../charts/shown-cells";
import type { Grid } from "../grid/grid";
import { valueAt } from "../grid/seen-cells";
import { patternAt } from "../view/shown-value";
import type { SeenCell } from "./passes";

/** A cell of the grid, as a filter sees it. */
export function seenCell(grid: Grid, worksheet: Worksheet, row: number, column: number): SeenCell {
  const value = valueAt(grid, worksheet, row, column);
  const format = typeof value === "number" ? patternAt(grid, worksheet, row, column) : undefined;
  const isDate = format !== undefined && numfmt.isDateFormat(format);
  return { value, text: labelOf({ value, format }), isDate };
}
