/**
 * Gives the selected cells another number format, in one step to undo; not those in rows that a filter hides. Of
 * whole columns, the cells in which something stands get it, and the column keeps it for those in which nothing
 * has stood yet.
 */
import type { IRange, Workbook, Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { holdsCell } from "../../engine/ranges";
import { spilledRanges } from "../../engine/read-cells";
import { putCell } from "../../workbook/book";
import { lookOfLine } from "../book/look-of-line";
import { selectedPlace } from "../entries/entry-check";
import { type IsHidden, NONE_SHOWN, rowsShown } from "../filtering/within-shown";
import { isEditing, WHILE_EDITING } from "../grid/editing";
import { type Grid, workbookOf } from "../grid/grid";
import { type CellData, writeAsOneStep } from "../grid/one-step";
import { valueAt } from "../grid/seen-cells";
import { generalText } from "../view/fit-numbers";
import { patternAt } from "../view/shown-value";
import { codeOfShown, GENERAL, isGeneral } from "./code";
import { codeOfColumn, columnSteps } from "./format-columns";

/** Another code for one that cells have; `shown` is how a number stands there that has the general one. */
export type Change = (code: string, shown: string) => string;

/** The sheet that is shown, what is selected on it, and the cell that takes what is typed. */
export interface Selected {
  readonly workbook: Workbook;
  readonly worksheet: Worksheet;
  readonly ranges: readonly IRange[];
  readonly row: number;
  readonly column: number;
}

export function selectedCells(grid: Grid): Selected | undefined {
  const workbook = workbookOf(grid);
  const worksheet = workbook?.getActiveSheet();
  const place = selectedPlace(grid);
  const selections = grid.injector.get(SheetsSelectionsService).getCurrentSelections();
  if (!workbook || !worksheet || !place) return undefined;
  return { ...place, workbook, worksheet, ranges: selections.map(({ range }) => range) };
}

/** The code of a cell, also one that its value brought along, or that its column has for it. */
export function codeAt(grid: Grid, worksheet: Worksheet, row: number, column: number): string {
  const styles = workbookOf(grid)?.getStyles();
  const own = patternAt(grid, worksheet, row, column);
  const blank = own === undefined && !worksheet.getCellRaw(row, column);
  const ofLine = blank && styles?.get(lookOfLine(worksheet, row, column))?.n?.pattern;
  return own || ofLine || GENERAL;
}

/** What a cell shows on the sheet. */
export function textAt(grid: Grid, worksheet: Worksheet, row: number, column: number): string {
  const value = valueAt(grid, worksheet, row, column);
  if (typeof value === "number" && isGeneral(codeAt(grid, worksheet, row, column)))
    return generalText(worksheet, row, column, value);
  if (typeof value === "boolean") return String(value).toUpperCase();
  return `${worksheet.getCell(row, column)?.v ?? ""}`;
}

/** Changes the codes of the selected cells; gives why it did not, where it did not. */
export function formatCells(grid: Grid, change: Change): string | undefined {
  if (isEditing(grid)) return WHILE_EDITING;
  const selected = selectedCells(grid);
  if (!selected) return "Select the cells to format.";
  const { workbook, worksheet } = selected;
  const spills = spilledRanges(grid.injector.get(FormulaDataModel), worksheet);
  const isFilled = (row: number, column: number) =>
    spills.some((range) => holdsCell(range, row, column));
  const isHidden = (row: number) => worksheet.getRowFiltered(row);
  if (selected.ranges.every((range) => rowsShown(range, isHidden).length === 0)) return NONE_SHOWN;
  const used = usedOf(worksheet, spills);
  const shown = shownIn(grid, selected, used, isHidden);
  const cells: CellData = {};
  const columns = new Map<number, string>();
  for (const range of selected.ranges) {
    const isWhole = spansRows(range, worksheet);
    const { startColumn, endColumn, ...lines } = within(range, worksheet, used);
    const rows = rowsShown(lines, isHidden);
    for (let column = startColumn; column <= endColumn; column++) {
      for (const row of rows) {
        const cell = worksheet.getCellRaw(row, column);
        const filled = isFilled(row, column);
        if (isWhole && !cell && !filled) continue;
        const code = codeAt(grid, worksheet, row, column);
        const fresh = change(code, shown);
        if (fresh === code) continue;
        // Without a format of its own, a value that a formula put there would take another one.
        const plain = isGeneral(fresh) && !filled;
        const t = cell?.t;
        const n = plain ? null : { pattern: fresh };
        putCell(cells, row, column, { s: { n }, ...(t !== undefined && { t }) });
      }
      if (isWhole) columns.set(column, change(codeOfColumn(workbook, worksheet, column), shown));
    }
  }
  const steps = columnSteps(workbook, worksheet, columns);
  if (Object.keys(cells).length === 0 && steps.length === 0) return NOTHING;
  const written = new Map([[worksheet.getSheetId(), cells]]);
  writeAsOneStep(grid, workbook, written, { steps, looksOnly: true });
  return undefined;
}

const NOTHING = "Nothing to change: the selected cells have this format, or one without digits.";

const spansRows = ({ startRow, endRow }: IRange, worksheet: Worksheet) =>
  startRow === 0 && endRow >= worksheet.getRowCount() - 1;

const spansColumns = ({ startColumn, endColumn }: IRange, worksheet: Worksheet) =>
  startColumn === 0 && endColumn >= worksheet.getColumnCount() - 1;

/** The last row and column in which something stands. */
function usedOf(worksheet: Worksheet, spills: readonly IRange[]) {
  const own = worksheet.getCellMatrix().getDataRange();
  return {
    row: Math.max(own.endRow, ...spills.map(({ endRow }) => endRow)),
    column: Math.max(own.endColumn, ...spills.map(({ endColumn }) => endColumn)),
  };
}

/** Whole columns and rows end where nothing stands any more. */
function within(
  range: IRange,
  worksheet: Worksheet,
  used: { row: number; column: number },
): IRange {
  const rows = spansRows(range, worksheet);
  const columns = spansColumns(range, worksheet);
  return {
    ...range,
    endRow: rows ? used.row : range.endRow,
    endColumn: columns ? Math.max(used.column, range.startColumn) : range.endColumn,
  };
}

/** So many numbers tell how many decimals are shown. */
const MOST_LOOKED_AT = 200;

/** Of the selected numbers without a format, the one that is shown with the most decimals. */
function shownIn(
  grid: Grid,
  { worksheet, ranges }: Selected,
  used: { row: number; column: number },
  isHidden: IsHidden,
): string {
  let [shown, looked] = ["0", 0];
  for (const range of ranges) {
    const { startColumn, endColumn, ...lines } = within(range, worksheet, used);
    for (const row of rowsShown(lines, isHidden))
      for (let column = startColumn; column <= endColumn; column++) {
        const value = valueAt(grid, worksheet, row, column);
        if (typeof value !== "number") continue;
        if (!isGeneral(codeAt(grid, worksheet, row, column))) continue;
        const text = generalText(worksheet, row, column, value);
        if (codeOfShown(text).length > codeOfShown(shown).length) shown = text;
        if (++looked === MOST_LOOKED_AT) return shown;
      }
  }
  return shown;
}
