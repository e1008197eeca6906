/**
 * The operators of the formula language, one value at a time. The grid's engine gives #VALUE! for a number
 * times an array, loses the error of a cell that is compared, takes text for less than a number, and
 * writes sixteen digits of a number into text.
 *
 * Source: ECMA-376 part 1, 18.17.2 (operators and their conversions) and OASIS OpenFormula, part "Recalculated
 * formula", chapters on conversions and infix operators; from memory.
 */
import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { numberOf, order, type Plain, textOf, verdicts } from "./coercion";
import { eachCellOf } from "./elementwise";

/** A blank cell is compared as the 0, the empty text or the FALSE that the other side asks for. */
function plain(value: BaseValueObject, beside: BaseValueObject): Plain {
  if (!value.isNull()) return value.getValue() as Plain;
  if (beside.isString()) return "";
  return beside.isBoolean() ? false : 0;
}

export function operatorsOf(formula: EngineFormula): BaseFunction[] {
  const { BooleanValueObject, ErrorType, ErrorValueObject, StringValueObject } = formula;

  type Operation = (one: BaseValueObject, other: BaseValueObject) => BaseValueObject;

  class Operator extends eachCellOf(formula) {
    constructor(name: string, operation: Operation) {
      super(name, [2], (one, other) => operation(one as BaseValueObject, other as BaseValueObject));
    }
  }

  const ofNumbers =
    (compute: Operation): Operation =>
    (one, other) => {
      const [left, right] = [numberOf(formula, one), numberOf(formula, other)];
      if (left.isError()) return left;
      return right.isError() ? right : compute(left, right);
    };

  class Comparison extends Operator {
    private verdict = verdicts["="] as (order: number) => boolean;

    constructor() {
      super("COMPARE", (one, other) =>
        BooleanValueObject.create(this.verdict(order(plain(one, other), plain(other, one)))),
      );
    }

    /** The engine has one function for all six, and says before each call which is meant. */
    setCompareType(operator: string): void {
      this.verdict = verdicts[operator] as (order: number) => boolean;
    }
  }

  const joined = new (eachCellOf(formula))("CONCATENATE", [1, 255], (...values) =>
    StringValueObject.create(values.map(textOf).join("")),
  );

  return [
    new Operator(
      "PLUS",
      ofNumbers((one, other) => one.plus(other)),
    ),
    new Operator(
      "MINUS",
      ofNumbers((one, other) => one.minus(other)),
    ),
    new Operator(
      "MULTIPLY",
      ofNumbers((one, other) => one.multiply(other)),
    ),
    new Operator(
      "DIVIDED",
      ofNumbers((one, other) =>
        other.getValue() === 0
          ? ErrorValueObject.create(ErrorType.DIV_BY_ZERO)
          : one.divided(other),
      ),
    ),
    new Operator(
      "POWER",
      ofNumbers((one, other) => one.pow(other)),
    ),
    new Comparison(),
    joined,
  ];
}
