/** A value as the status line and the refusals write it: a number in full, a date as a date. */
import { numfmt, type Worksheet } from "@univerjs/core";
import { isError, type Value } from "../../workbook/book";
import { type Grid, workbookOf } from "../grid/grid";

/** The number format in which a cell shows, also one that its value brought along when it spilled. */
export const patternAt = (grid: Grid, worksheet: Worksheet, row: number, column: number) =>
  workbookOf(grid)?.getStyles().getStyleByCell(worksheet.getCell(row, column))?.n?.pattern;

export function shownValue(value: Value, pattern: string | undefined): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (isError(value)) return value.error;
  if (typeof value === "string") return value;
  if (pattern !== undefined && numfmt.isDateFormat(pattern))
    return numfmt.format(pattern, value, { throws: false });
  return String(Number(value.toPrecision(12)));
}
