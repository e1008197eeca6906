import type { ArrayValueObject, BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";

export type OneByOne = (...values: BaseValueObject[]) => BaseValueObject;

/**
 * Applies a function of single values to arrays, cell by cell. A single value, a single row and a single
 * column go with every cell, row or column of the others; where one array is too short, the answer is #N/A.
 */
export function elementwise(
  formula: EngineFormula,
  variants: readonly BaseValueObject[],
  single: OneByOne,
): BaseValueObject {
  const arrays = variants.filter((one) => one.isArray()) as ArrayValueObject[];
  if (arrays.length === 0) return single(...variants);
  const rowCount = Math.max(...arrays.map((array) => array.getRowCount()));
  const columnCount = Math.max(...arrays.map((array) => array.getColumnCount()));
  if (rowCount === 1 && columnCount === 1)
    return single(...variants.map((one) => cellOf(formula, one, 0, 0)));
  const calculateValueList = Array.from({ length: rowCount }, (_, row) =>
    Array.from({ length: columnCount }, (_, column) =>
      single(...variants.map((one) => cellOf(formula, one, row, column))),
    ),
  );
  return arrayOf(formula, calculateValueList);
}

/** A function of single values, which goes through ranges and arrays cell by cell; an error in comes out. */
export function eachCellOf(formula: EngineFormula) {
  return class EachCell extends formula.BaseFunction {
    constructor(
      name: string,
      counts: readonly number[],
      readonly single: OneByOne,
    ) {
      super(name);
      this.minParams = Math.min(...counts);
      this.maxParams = Math.max(...counts);
    }

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      return elementwise(
        formula,
        variants,
        (...values) => values.find((value) => value.isError()) ?? this.single(...values),
      );
    }
  };
}

/** What an array holds in a cell, a blank where nothing is. */
function cellOf(
  formula: EngineFormula,
  value: BaseValueObject,
  row: number,
  column: number,
): BaseValueObject {
  if (!value.isArray()) return value;
  const array = value as ArrayValueObject;
  const down = array.getRowCount() === 1 ? 0 : row;
  const across = array.getColumnCount() === 1 ? 0 : column;
  if (down >= array.getRowCount() || across >= array.getColumnCount())
    return formula.ErrorValueObject.create(formula.ErrorType.NA);
  return array.get(down, across) ?? formula.NullValueObject.create();
}

/** An array that stands nowhere: the answer of a calculation. */
export function arrayOf(formula: EngineFormula, rows: BaseValueObject[][]): ArrayValueObject {
  const place = { unitId: "", sheetId: "", row: -1, column: -1 };
  const size = { rowCount: rows.length, columnCount: rows[0]?.length ?? 0 };
  return formula.ArrayValueObject.create({ calculateValueList: rows, ...size, ...place });
}

/** The values of an array by row; a single value is an array of one. */
export function rowsOf(formula: EngineFormula, value: BaseValueObject): BaseValueObject[][] {
  if (!value.isArray()) return [[value]];
  const array = value as ArrayValueObject;
  const columns = array.getColumnCount();
  return Array.from({ length: array.getRowCount() }, (_, row) =>
    Array.from({ length: columns }, (_, column) => cellOf(formula, array, row, column)),
  );
}

/** Rows for columns. */
export const turned = <T>(rows: readonly T[][]): T[][] =>
  (rows[0] ?? []).map((_, column) => rows.map((row) => row[column] as T));
