import type { Format, Formula, Worksheet } from "wasm-xlsxwriter";
import { type Cell, isError, type Sheet, type Value } from "../book";
import { cellsOf } from "../cells-within";
import { type FunctionNames, storedFormula } from "../formula/stored-form";
import type { Library } from "./library";

export type Formats = (style: string | undefined) => Format;

/** Texts and errors are put in afterwards: the package takes a text that looks like a number for one. */
function resultText(value: Value): string {
  if (value === null || typeof value === "string" || isError(value)) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return `${value}`;
}

function writeFormula(
  worksheet: Worksheet,
  row: number,
  column: number,
  cell: Cell,
  formula: Formula,
  format: Format,
): void {
  if (!cell.spill) {
    worksheet.writeFormulaWithFormat(row, column, formula, format);
    return;
  }
  const lastRow = row + cell.spill.rows - 1;
  const lastColumn = column + cell.spill.columns - 1;
  if (cell.fixed)
    worksheet.writeArrayFormulaWithFormat(row, column, lastRow, lastColumn, formula, format);
  else
    worksheet.writeDynamicArrayFormulaWithFormat(row, column, lastRow, lastColumn, formula, format);
}

function writeValue(
  worksheet: Worksheet,
  row: number,
  column: number,
  value: Value,
  format: Format,
): void {
  if (typeof value === "number") worksheet.writeNumberWithFormat(row, column, value, format);
  else if (typeof value === "string") worksheet.writeStringWithFormat(row, column, value, format);
  else if (typeof value === "boolean") worksheet.writeBooleanWithFormat(row, column, value, format);
  else worksheet.writeBlank(row, column, format);
}

/**
 * Writes all cells of a sheet. A formula that spills blanks what it fills, so the values in its
 * area follow after all formulas.
 */
export function writeCells(
  library: Library,
  worksheet: Worksheet,
  sheet: Sheet,
  formats: Formats,
  names: FunctionNames,
): void {
  for (const [row, column, cell] of cellsOf(sheet)) {
    if (cell.formula === undefined) continue;
    const formula = new library.Formula(`=${storedFormula(cell.formula, names)}`).setResult(
      resultText(cell.value),
    );
    writeFormula(worksheet, row, column, cell, formula, formats(cell.style));
  }
  for (const [row, column, cell] of cellsOf(sheet))
    if (cell.formula === undefined)
      writeValue(worksheet, row, column, cell.value, formats(cell.style));
}
