/** Formulas written with names or tables, once these have come to mean other cells. */
import type { Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { fromGrid, toGrid } from "../../engine/dialect";
import type { SpellOut } from "../../engine/spelled-out";
import type { Carried } from "../book/grid-book";
import { writtenFormula } from "../book/read-grid";
import type { Grid } from "../grid/grid";
import { type CellData, putCell } from "../grid/one-step";

/** What the words of formulas stood for, and what they stand for now. */
export interface Meanings {
  readonly before: SpellOut;
  readonly after: SpellOut;
  /** Whether a formula without such a word may have come to hold one. */
  readonly isNew: boolean;
}

export function readAnew(
  { injector }: Grid,
  worksheet: Worksheet,
  { before, after, isNew }: Meanings,
  cells: CellData,
): void {
  const model = injector.get(FormulaDataModel);
  const [sheet, sheetId, unitId] = [
    worksheet.getName(),
    worksheet.getSheetId(),
    worksheet.getUnitId(),
  ];
  worksheet.getCellMatrix().forValue((row, column, data) => {
    const { formula: kept } = (data?.custom ?? {}) as Carried;
    if (!(data?.f || data?.si) || (kept === undefined && !isNew)) return;
    const text = data.si ? model.getFormulaStringByCell(row, column, sheetId, unitId) : data.f;
    if (!text) return;
    const place = { sheet, row, column };
    const formula = fromGrid(text);
    const written = writtenFormula({ formula, data, value: null }, before, place) ?? formula;
    const f = toGrid(after(written, place));
    if (fromGrid(f) === formula) return;
    const custom = { ...data.custom, formula: written };
    putCell(cells, row, column, { ...cells[row]?.[column], f, si: null, custom });
  });
}
