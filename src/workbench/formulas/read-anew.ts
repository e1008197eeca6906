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
  const sheet = worksheet.getName();
  worksheet.getCellMatrix().forValue((row, column, data) => {
    const { formula: kept } = (data?.custom ?? {}) as Carried;
    if (kept === undefined && !isNew) return;
    const text = gridFormulaAt(grid, worksheet, row, column);
    if (text === undefined) return;
    const place = { sheet, row, column };
    const formula = fromGrid(text);
    const written = writtenFormula({ formula, data, value: null }, before, place) ?? formula;
    const f = toGrid(after(written, place));
    if (fromGrid(f) === formula) return;
    const custom = { ...data?.custom, formula: written };
    putCell(cells, row, column, { ...cells[row]?.[column], f, si: null, custom });
  });
}
