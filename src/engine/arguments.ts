/** What stands in the cells that a formula names, in the form in which a host hands it to a function. */
import type { ICellData, Nullable } from "@univerjs/core";
import type {
  ArrayValueObject,
  BaseReferenceObject,
  BaseValueObject,
  FunctionVariantType,
} from "@univerjs/engine-formula";

export const errors = new Set([
  "#DIV/0!",
  "#N/A",
  "#NAME?",
  "#NULL!",
  "#NUM!",
  "#REF!",
  "#VALUE!",
  "#SPILL!",
  "#CALC!",
  "#CYCLE!",
  "#CONNECT!",
  "#ERROR!",
  "#GETTING_DATA",
]);

export const isErrorText = (value: unknown): value is string =>
  typeof value === "string" && value.startsWith("#") && errors.has(value);

/** Turns an error into what the functions take for it: that of a cell, or one that was computed on the way. */
export type ErrorMaker = (error: string, source: ErrorCell | BaseValueObject) => unknown;

export interface ErrorCell {
  readonly reference: BaseReferenceObject;
  readonly row: number;
  readonly column: number;
}

// CellValueType of the grid, as numbers: the enum itself would tie this module to the package.
const BOOLEAN = 3;

/** Blank → null, an error → the functions' error object, anything else as it is. */
export function plainValue(cell: Nullable<ICellData>): number | string | boolean | null {
  const value = cell?.v;
  if (value === undefined || value === null) {
    const text = cell?.p?.body?.dataStream.replace(/\r\n$/, "");
    return text === undefined ? null : text.replaceAll("\r", "\n");
  }
  if (cell?.t === BOOLEAN) return value === true || value === 1 || value === "1";
  return value;
}

function referenceCells(reference: BaseReferenceObject, makeError: ErrorMaker): unknown[][] {
  const { startRow, endRow, startColumn, endColumn } = reference.getRangePosition();
  const rows: unknown[][] = [];
  const last = Math.min(endRow, lastUsedRow(reference, startRow, endRow));
  for (let row = startRow; row <= last; row++) {
    const values: unknown[] = [];
    for (let column = startColumn; column <= endColumn; column++) {
      const value = plainValue(reference.getCellData(row, column));
      values.push(isErrorText(value) ? makeError(value, { reference, row, column }) : value);
    }
    rows.push(values);
  }
  return rows;
}

/** A range that reaches the end of its sheet (a whole column) is read as far as anything stands in it. */
function lastUsedRow(reference: BaseReferenceObject, startRow: number, endRow: number): number {
  if (endRow < reference.getActiveSheetRowCount() - 1) return endRow;
  const filled = [
    reference.getCurrentActiveSheetData()?.cellData,
    reference.getCurrentRuntimeSheetData(),
    reference.getCurrentActiveArrayFormulaCellData(),
    reference.getCurrentRuntimeActiveArrayFormulaCellData(),
  ];
  return Math.max(startRow, ...filled.map((cells) => (cells?.getLength() ?? 0) - 1));
}

function objectValue(object: Nullable<BaseValueObject>, makeError: ErrorMaker): unknown {
  if (!object || object.isNull()) return null;
  if (object.isError()) return makeError(String(object.getValue()), object);
  return object.getValue();
}

/**
 * An omitted argument → null; a range or an array → rows of values; a single value → [[value]] where
 * the function takes a range, the value itself where it takes one. Undefined: the function takes one
 * value and was given several.
 */
export function readArgument(
  variant: FunctionVariantType | undefined,
  takesRange: boolean,
  makeError: ErrorMaker,
): unknown {
  if (variant === undefined) return null;
  if (variant.isReferenceObject() || variant.isArray()) {
    const cells = variant.isReferenceObject()
      ? referenceCells(variant as BaseReferenceObject, makeError)
      : (variant as ArrayValueObject)
          .getArrayValue()
          .map((row) => row.map((value) => objectValue(value, makeError)));
    if (takesRange) return cells;
    return cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
  }
  const value = objectValue(variant as BaseValueObject, makeError);
  return !takesRange || value === null ? value : [[value]];
}
