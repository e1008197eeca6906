/**
 * Sorts the rows around the selected cell by its column. Each cell goes with its row: its look, its comment, and
 * its formula with what that reads in the row. Entry rules and conditional formats belong to their places, and
 * rows that are hidden stay, as in every spreadsheet.
 */
import type { ICellData, IStyleData, Nullable, Workbook, Worksheet } from "@univerjs/core";
import { toGrid } from "../../engine/dialect";
import { areaOf } from "../../engine/ranges";
import type { ReadCell } from "../../engine/read-cells";
import { holdsCell, overlap } from "../../workbook/areas";
import { type Area, putCell } from "../../workbook/book";
import { inMovedRow } from "../../workbook/formula/moved-row";
import { SORT_ROWS, type SortedRows } from "../following/changes";
import { isEditing, WHILE_EDITING } from "../grid/editing";
import type { Grid } from "../grid/grid";
import { type CellData, writeAsOneStep } from "../grid/one-step";
import { aroundCell } from "./around-cell";
import { type Block, blockAt, linesOf } from "./block";
import { hindranceOf } from "./hindrance";
import { type Direction, inOrder } from "./order";
import { spillsBeside } from "./spills";

/** The rows that would be sorted, and by which column. */
export interface Sortable extends Block {
  readonly column: number;
  readonly workbook: Workbook;
  readonly worksheet: Worksheet;
  readonly cells: ReadonlyMap<number, ReadonlyMap<number, ReadCell>>;
  /** What formulas fill beside the rows, and what stays there. */
  readonly filled: readonly Area[];
}

/** Or the sentence why none can be. */
export function sortableRows(grid: Grid): Sortable | string {
  if (isEditing(grid)) return WHILE_EDITING;
  const around = aroundCell(grid);
  const block = around && blockAt(around.sheet, around.selected, around.place);
  if (!block) return "Select a cell in the column to sort by.";
  const { workbook, worksheet, place, cells, sheet } = around;
  const spills = spillsBeside(sheet, block.area);
  const hindrance = hindranceOf(block.area, place.column, {
    spills,
    merged: worksheet.getMergeData().map(areaOf),
    tables: sheet.tables.filter(({ area }) => !holdsCell(area, place.row, place.column)),
  });
  const filled = spills.map(({ area }) => area).filter((area) => overlap(area, block.area));
  return hindrance ?? { ...block, column: place.column, workbook, worksheet, cells, filled };
}

export function sortRows(grid: Grid, rows: Sortable, direction: Direction): void {
  const { area, column, workbook, worksheet, cells, filled } = rows;
  const shown = linesOf(area).filter((row) => worksheet.getRowVisible(row));
  const order = inOrder(shown, (row) => cells.get(row)?.get(column)?.value ?? null, direction);
  const styles = workbook.getStyles();
  const moved: CellData = {};
  for (const [at, row] of shown.entries()) {
    const from = order[at] as number;
    if (from === row) continue;
    for (let column = area.column; column < area.column + area.columns; column++) {
      if (filled.some((one) => holdsCell(one, one.row, column))) continue;
      const source = cells.get(from)?.get(column);
      const place = worksheet.getCellRaw(row, column);
      if (!source && !place) continue;
      const style = movedStyle(styles.getStyleByCell(source?.data), styles.getStyleByCell(place));
      const f = source?.formula && inMovedRow(source.formula, worksheet.getName(), row - from);
      putCell(moved, row, column, {
        ...movedContent(source?.data),
        f: f ? toGrid(f) : null,
        s: style,
      });
    }
  }
  if (Object.keys(moved).length === 0) return;
  const sheetId = worksheet.getSheetId();
  const there = shown.map((row, at) => [order[at] as number, row] as const);
  const back = there.map(([from, to]) => [to, from] as const);
  const step = (moves: SortedRows["moves"]) => ({
    id: SORT_ROWS,
    params: { sheetId, area, moves } satisfies SortedRows,
  });
  const steps = [{ todo: step(there), undo: step(back) }];
  writeAsOneStep(grid, workbook, new Map([[sheetId, moved]]), { steps });
}

const movedContent = (source: Nullable<ICellData>): ICellData => ({
  v: source?.v ?? null,
  t: source?.t ?? null,
  p: source?.p ?? null,
  si: null,
  custom: source?.custom ?? null,
});

/** In place of the look that is there, whose every part has to be named to go. */
function movedStyle(source: Nullable<IStyleData>, place: Nullable<IStyleData>): IStyleData {
  const bd = { ...gone(place?.bd), ...source?.bd };
  return { ...gone(place), ...source, ...(place?.bd && source?.bd && { bd }) };
}

const gone = (parts: Nullable<object>) =>
  Object.fromEntries(Object.keys(parts ?? {}).map((part) => [part, null]));
