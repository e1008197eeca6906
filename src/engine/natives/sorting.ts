import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { order, type Plain } from "./coercion";
import { arrayOf, rowsOf, turned } from "./elementwise";
import { isFailed, wholeNumbers } from "./number-lists";

type Rows = BaseValueObject[][];

/** What rows are put in order by: a value for each row, upwards (1) or downwards (-1). */
interface Key {
  readonly values: readonly BaseValueObject[];
  readonly direction: number;
}

/** Blank cells come last in both directions, errors after every value. */
function compare(one: BaseValueObject, other: BaseValueObject, direction: number): number {
  if (one.isNull() || other.isNull()) return Number(one.isNull()) - Number(other.isNull());
  if (one.isError() || other.isError())
    return direction * (Number(one.isError()) - Number(other.isError()));
  return direction * order(one.getValue() as Plain, other.getValue() as Plain);
}

/** The rows in the order of the first key, those alike in it of the next one, and else as they stood. */
function inOrder(rows: Rows, keys: readonly Key[]): Rows {
  const places = rows.map((_, place) => place);
  places.sort((one, other) => {
    for (const { values, direction } of keys) {
      const [first, second] = [values[one], values[other]] as [BaseValueObject, BaseValueObject];
      const result = compare(first, second, direction);
      if (result !== 0) return result;
    }
    return one - other;
  });
  return places.map((place) => rows[place] as BaseValueObject[]);
}

/**
 * SORT and SORTBY. The engine's own sort the very range that they read, put "liner" before "Liner", and SORT
 * takes no list of columns to sort by.
 */
export function sortingOf(formula: EngineFormula): BaseFunction[] {
  const { ErrorType, ErrorValueObject, NumberValueObject } = formula;
  const wrong = () => ErrorValueObject.create(ErrorType.VALUE);
  const one = NumberValueObject.create(1);
  const given = (value: BaseValueObject | undefined) => (!value || value.isNull() ? one : value);

  const isDirection = (direction: number | undefined): direction is number =>
    direction === 1 || direction === -1;

  class Sort extends formula.BaseFunction {
    override minParams = 1;
    override maxParams = 4;

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const [array, column, direction, byColumn] = variants as [
        BaseValueObject,
        ...(BaseValueObject | undefined)[],
      ];
      const failed = variants.find((variant) => variant.isError());
      if (failed) return failed;
      const columns = wholeNumbers(formula, given(column));
      if (isFailed(columns)) return columns;
      const directions = wholeNumbers(formula, given(direction));
      if (isFailed(directions)) return directions;
      const sideways = Boolean(byColumn?.getValue());
      const all = rowsOf(formula, array);
      const rows = sideways ? turned(all) : all;
      const keys: Key[] = [];
      for (const [at, column] of columns.entries()) {
        const direction = directions.length === 1 ? directions[0] : directions[at];
        const isThere = column >= 1 && column <= (rows[0]?.length ?? 0);
        if (!isThere || !isDirection(direction)) return wrong();
        keys.push({ values: rows.map((row) => row[column - 1] as BaseValueObject), direction });
      }
      const sorted = inOrder(rows, keys);
      return arrayOf(formula, sideways ? turned(sorted) : sorted);
    }
  }

  class SortBy extends formula.BaseFunction {
    override minParams = 2;
    override maxParams = 255;

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const [array, ...pairs] = variants as [BaseValueObject, ...BaseValueObject[]];
      const failed = variants.find((variant) => variant.isError());
      if (failed) return failed;
      const all = rowsOf(formula, array);
      const first = rowsOf(formula, pairs[0] as BaseValueObject);
      const sideways = first.length === 1 && (first[0]?.length ?? 0) > 1;
      const rows = sideways ? turned(all) : all;
      const keys: Key[] = [];
      for (let at = 0; at < pairs.length; at += 2) {
        const by = rowsOf(formula, pairs[at] as BaseValueObject);
        const values = sideways ? turned(by) : by;
        const directions = wholeNumbers(formula, given(pairs[at + 1]));
        if (isFailed(directions)) return directions;
        const [direction] = directions;
        const isLine = values.length === rows.length && values.every((line) => line.length === 1);
        if (!isLine || directions.length > 1 || !isDirection(direction)) return wrong();
        keys.push({ values: values.flat(), direction });
      }
      const sorted = inOrder(rows, keys);
      return arrayOf(formula, sideways ? turned(sorted) : sorted);
    }
  }

  return [new Sort("SORT"), new SortBy("SORTBY")];
}
