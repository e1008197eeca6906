/** Formulas written with names or tables, once these have come to mean other cells. */
import type { Worksheet } from "@univerjs/core";
import { fromGrid, toGrid } from "../../engine/dialect";
import type { SpellOut } from "../../engine/spelled-out";
import { putCell } from "../../workbook/book";
import type { Carried } from "../book/grid-book";
import { writtenFormula } from "../book/written-formula";
import type { Grid } from "../grid/grid";
import type { CellData } from "../grid/one-step";
import { gridFormulaAt } from "../grid/seen-cells";

/** What the words of formulas stood for, and what they stand for now. */
export interface Meanings {
  readonly before: SpellOut;
  readonly after: SpellOut;
  /** Whether a formula without such a word may have come to hold one. */
  readonly isNew: boolean;
}

export function readAnew(
  grid: Grid,
  worksheet: Worksheet,
  { before, after, isNew }: Meanings,
  cells: CellData,
): void {
  const written = asWritten(grid, worksheet, before, isNew);
  writeAnew(grid, worksheet, written, after, cells);
}

/** A formula as it was written, in its cell. */
export interface Written {
  readonly row: number;
  readonly column: number;
  readonly written: string;
}

/** Those of a sheet that hold such words, or all of them where these may be new. */
export function asWritten(
  grid: Grid,
  worksheet: Worksheet,
  before: SpellOut,
  isNew = false,
): Written[] {
  const sheet = worksheet.getName();
  const found: Written[] = [];
  worksheet.getCellMatrix().forValue((row, column, data) => {
    const { formula: kept } = (data?.custom ?? {}) as Carried;
    if (kept === undefined && !isNew) return;
    const text = gridFormulaAt(grid, worksheet, row, column);
    if (text === undefined) return;
    const formula = fromGrid(text);
    const place = { sheet, row, column };
    const written = writtenFormula({ formula, data, value: null }, before, place) ?? formula;
    if (isNew || written !== formula) found.push({ row, column, written });
  });
  return found;
}

/** As they are to be read now, where that is another formula than the cell holds, or is given. */
export function writeAnew(
  grid: Grid,
  worksheet: Worksheet,
  formulas: readonly Written[],
  after: SpellOut,
  cells: CellData,
): void {
  for (const { row, column, written } of formulas) {
    const given = cells[row]?.[column];
    const f = toGrid(after(written, { sheet: worksheet.getName(), row, column }));
    const now = given?.f ?? gridFormulaAt(grid, worksheet, row, column) ?? "";
    if (fromGrid(f) === fromGrid(now)) continue;
    const custom = given?.custom ?? worksheet.getCellRaw(row, column)?.custom;
    putCell(cells, row, column, { ...given, f, si: null, custom: { ...custom, formula: written } });
  }
}
