/** Cells of the grid as a person sees them: what a formula spilled counts as the value of its cell. */
import type { Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { CellPlace } from "../../engine/cell-place";
import { fromGrid } from "../../engine/dialect";
import { holdsCell } from "../../engine/ranges";
import { readValue, spilledRanges } from "../../engine/read-cells";
import { spellingOut } from "../../engine/spelled-out";
import { isError, type Value } from "../../workbook/book";
import type { Carried } from "../book/grid-book";
import { writtenFormula } from "../book/written-formula";
import { vocabularyOf } from "../formulas/typed-formulas";
import { type Grid, workbookOf } from "./grid";

export function valueAt({ injector }: Grid, worksheet: Worksheet, row: number, column: number) {
  const own = readValue(worksheet.getCellRaw(row, column));
  if (own !== null) return own;
  const spilled = injector.get(FormulaDataModel).getArrayFormulaCellData();
  return readValue(spilled[worksheet.getUnitId()]?.[worksheet.getSheetId()]?.[row]?.[column]);
}

/** The formula of a cell in the grid's own form, also where the grid keeps it at another cell; undefined where it holds none. */
export const gridFormulaAt = (
  { injector }: Grid,
  worksheet: Worksheet,
  row: number,
  column: number,
): string | undefined =>
  injector
    .get(FormulaDataModel)
    .getFormulaStringByCell(row, column, worksheet.getSheetId(), worksheet.getUnitId()) ??
  undefined;

/** The formula of a cell, as it was written, without "="; undefined where it holds none. */
export function formulaAt(
  grid: Grid,
  worksheet: Worksheet,
  row: number,
  column: number,
): string | undefined {
  const data = worksheet.getCellRaw(row, column);
  const text = gridFormulaAt(grid, worksheet, row, column);
  if (text === undefined) return undefined;
  const formula = fromGrid(text);
  const { formula: written } = (data?.custom ?? {}) as Carried;
  if (written === undefined) return formula;
  const place = { sheet: worksheet.getName(), row, column };
  return writtenFormula({ formula, data, value: null }, spellingOut(vocabularyOf(grid)), place);
}

/** The cell of the formula that filled a cell; the cell itself where none spilled into it. */
export function anchorOf({ injector }: Grid, worksheet: Worksheet, row: number, column: number) {
  const around = spilledRanges(injector.get(FormulaDataModel), worksheet).find((range) =>
    holdsCell(range, row, column),
  );
  return { row: around?.startRow ?? row, column: around?.startColumn ?? column };
}

/** A cell that shows an error, and the cell of the formula that gave it. */
export interface FailingCell extends CellPlace {
  readonly error: string;
  readonly anchor: { readonly row: number; readonly column: number };
}

/** Every cell that shows an error by its formula, or by one that spilled into it. */
export function failingCells(grid: Grid): FailingCell[] {
  const model = grid.injector.get(FormulaDataModel);
  const found: FailingCell[] = [];
  for (const worksheet of workbookOf(grid)?.getSheets() ?? []) {
    const sheetId = worksheet.getSheetId();
    const look = (value: Value, row: number, column: number, anchor = { row, column }) => {
      if (isError(value)) found.push({ sheetId, row, column, error: value.error, anchor });
    };
    worksheet.getCellMatrix().forValue((row, column, data) => {
      if (data?.f || data?.si) look(readValue(data), row, column);
    });
    const spilled = model.getArrayFormulaCellData()[worksheet.getUnitId()]?.[sheetId];
    for (const range of spilledRanges(model, worksheet)) {
      const anchor = { row: range.startRow, column: range.startColumn };
      for (let row = range.startRow; row <= range.endRow; row++)
        for (let column = range.startColumn; column <= range.endColumn; column++)
          if (row !== anchor.row || column !== anchor.column)
            look(readValue(spilled?.[row]?.[column]), row, column, anchor);
    }
  }
  return found;
}
