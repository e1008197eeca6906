import { addressOf, parseArea, sheetPrefix } from "../../workbook/address";
import type { CellValue, SheetCell } from "../host";
import { placeOf } from "../place";

/** The range behind an address that names its sheet. */
export function rangeAt(context: Excel.RequestContext, address: string): Excel.Range {
  const { sheet, cells } = placeOf(address);
  return context.workbook.worksheets.getItem(sheet).getRange(cells);
}

/** The address of one cell of a range, counted from its first. */
export function cellWithin(address: string, row: number, column: number): string {
  const { sheet, cells } = placeOf(address);
  const area = parseArea(cells);
  return sheetPrefix(sheet) + addressOf(area.row + row, area.column + column);
}

/** A cell of a range whose address, formulas and values are loaded. */
export function firstCell(range: Excel.Range): SheetCell {
  return {
    address: range.address,
    formula: shownFormula(range.formulas[0]?.[0]),
    value: shownValue(range.values[0]?.[0]),
  };
}

/** What Excel gives for the formula of a cell is its value where it holds none. */
export const shownFormula = (formula: unknown): string =>
  typeof formula === "string" && formula.startsWith("=") ? formula : "";

export const shownValue = (value: unknown): CellValue =>
  value === "" || value === undefined ? null : (value as CellValue);

/**
 * A value as Excel must be given it so that it stays what it is: a text that Excel would read as a
 * formula, a number, a date or a truth value is marked as text.
 */
export function typedValue(value: CellValue): string | number | boolean {
  if (value === null) return "";
  if (typeof value !== "string") return value;
  return /^[^\p{L}]|\d|^(true|false)$/iu.test(value) ? `'${value}` : value;
}
