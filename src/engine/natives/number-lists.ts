import type { BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { numberOf } from "./coercion";
import { rowsOf } from "./elementwise";

/** The whole numbers in a single value, a row or a column; or the error that stands there instead. */
export function wholeNumbers(
  formula: EngineFormula,
  value: BaseValueObject,
): readonly number[] | BaseValueObject {
  const rows = rowsOf(formula, value);
  if (rows.length > 1 && (rows[0]?.length ?? 0) > 1)
    return formula.ErrorValueObject.create(formula.ErrorType.VALUE);
  const numbers = rows.flat().map((cell) => (cell.isError() ? cell : numberOf(formula, cell)));
  return (
    numbers.find((number) => number.isError()) ??
    numbers.map((number) => Math.trunc(Number(number.getValue())))
  );
}

export const isFailed = (
  numbers: readonly number[] | BaseValueObject,
): numbers is BaseValueObject => !Array.isArray(numbers);
