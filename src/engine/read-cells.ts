/** What the grid's model holds after a calculation, as cells of ours: formulas with what they fill, spilled values marked. */
import type { ICellData, IRange, Nullable, Worksheet } from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/engine-formula";
import type { Cell, Value } from "../workbook/book";
import { isErrorText, plainValue } from "./arguments";
import { fromGrid } from "./dialect";

export interface ReadCell extends Pick<Cell, "value" | "formula" | "spill"> {
  /** The cell in the grid's own form, for those who read its look. */
  readonly data: Nullable<ICellData>;
  /** Where the formula stands that spilled the value here. */
  readonly from?: { readonly row: number; readonly column: number };
}

/** Full precision, other than the grid's own getValue, which rounds to twelve digits. */
export function readValue(data: Nullable<ICellData>): Value {
  const value = plainValue(data);
  return isErrorText(value) ? { error: value } : value;
}

/** The ranges that the answers of a sheet's formulas would fill, blocked or not. */
export function answeredRanges(model: FormulaDataModel, worksheet: Worksheet): IRange[] {
  const byRow = model.getArrayFormulaRange()[worksheet.getUnitId()]?.[worksheet.getSheetId()];
  return Object.values<Record<number, IRange>>((byRow ?? {}) as never).flatMap((byColumn) =>
    Object.values(byColumn),
  );
}

/** The ranges that formulas of a sheet fill. One whose way is blocked fills none, though the grid keeps its range. */
export const spilledRanges = (model: FormulaDataModel, worksheet: Worksheet): IRange[] =>
  answeredRanges(model, worksheet).filter(
    ({ startRow, startColumn }) =>
      !isBlocked(readValue(worksheet.getCellRaw(startRow, startColumn))),
  );

export function readCells(
  model: FormulaDataModel,
  worksheet: Worksheet,
): Map<number, Map<number, ReadCell>> {
  const unitId = worksheet.getUnitId();
  const sheetId = worksheet.getSheetId();
  const rows = new Map<number, Map<number, ReadCell>>();
  const set = (row: number, column: number, cell: ReadCell) => {
    const known = rows.get(row);
    if (known) known.set(column, cell);
    else rows.set(row, new Map([[column, cell]]));
  };
  worksheet.getCellMatrix().forValue((row, column, data) => {
    if (!data) return;
    const text = data.si ? model.getFormulaStringByCell(row, column, sheetId, unitId) : data.f;
    const formula = text ? { formula: fromGrid(text) } : {};
    set(row, column, { data, value: readValue(data), ...formula });
  });

  const spilledCells = model.getArrayFormulaCellData()[unitId]?.[sheetId];
  for (const { startRow, startColumn, endRow, endColumn } of spilledRanges(model, worksheet)) {
    const anchor = rows.get(startRow)?.get(startColumn);
    if (!anchor?.formula) continue;
    const spill = { rows: endRow - startRow + 1, columns: endColumn - startColumn + 1 };
    set(startRow, startColumn, { ...anchor, spill });
    for (let row = startRow; row <= endRow; row++)
      for (let column = startColumn; column <= endColumn; column++) {
        if (row === startRow && column === startColumn) continue;
        const value = readValue(spilledCells?.[row]?.[column]);
        const from = { row: startRow, column: startColumn };
        set(row, column, { data: rows.get(row)?.get(column)?.data, value, from });
      }
  }
  return rows;
}

const isBlocked = (value: Value) =>
  typeof value === "object" && value !== null && value.error === "#SPILL!";
