/** Arguments that the engine's own functions misread are put into a form that they read right. */
import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { textOf } from "./coercion";
import { elementwise } from "./elementwise";

type Adapt = (formula: EngineFormula, value: BaseValueObject) => BaseValueObject;

/** Conditions: a text is no condition, unless it says TRUE or FALSE. The engine takes any for TRUE. */
const condition: Adapt = (formula, value) => {
  if (!value.isString()) return value;
  const word = String(value.getValue()).toUpperCase();
  if (word === "TRUE" || word === "FALSE")
    return formula.BooleanValueObject.create(word === "TRUE");
  return formula.ErrorValueObject.create(formula.ErrorType.VALUE);
};

/** Numbers as text: the engine takes twelve digits of them, or sixteen. */
const text: Adapt = (formula, value) =>
  value.isNumber() ? formula.StringValueObject.create(textOf(value)) : value;

/** TEXT rounds the digits that a number shows, not its binary form: 1.005 to two places is 1.01. */
const shown: Adapt = (formula, value) => {
  if (value.isBoolean()) return formula.StringValueObject.create(textOf(value));
  const number = value.getValue();
  if (typeof number !== "number" || !value.isNumber() || Number.isInteger(number)) return value;
  return formula.NumberValueObject.create(Number(number.toPrecision(15)) * (1 + 2 ** -51));
};

const all = () => true;
const first = (index: number) => index === 0;
const firstTwo = (index: number) => index < 2;
const firstThree = (index: number) => index < 3;

interface Adaptation {
  readonly adapt: Adapt;
  readonly of: (index: number) => boolean;
  /** Text in the cells of a range is passed over, and only a text that is given itself counts. */
  readonly givenOnly?: boolean;
}

const texts = (of: (index: number) => boolean): Adaptation => ({ adapt: text, of });
const conditions: Adaptation = { adapt: condition, of: all, givenOnly: true };

const adaptations: Readonly<Record<string, Adaptation>> = {
  IF: { adapt: condition, of: first },
  IFS: { adapt: condition, of: (index) => index % 2 === 0 },
  AND: conditions,
  OR: conditions,
  XOR: conditions,
  LEN: texts(first),
  LEFT: texts(first),
  RIGHT: texts(first),
  MID: texts(first),
  UPPER: texts(first),
  LOWER: texts(first),
  PROPER: texts(first),
  TRIM: texts(first),
  CLEAN: texts(first),
  REPT: texts(first),
  FIND: texts(firstTwo),
  EXACT: texts(firstTwo),
  TEXTBEFORE: texts(firstTwo),
  TEXTAFTER: texts(firstTwo),
  SUBSTITUTE: texts(firstThree),
  REPLACE: texts((index) => index === 0 || index === 3),
  CONCAT: texts(all),
  TEXTJOIN: texts((index) => index !== 1),
  TEXT: { adapt: shown, of: first },
};

/** The function with its arguments put right before each call. */
export function adapted(formula: EngineFormula, executor: BaseFunction): BaseFunction["calculate"] {
  const calculate = executor.calculate.bind(executor);
  const adaptation = adaptations[executor.name];
  if (!adaptation) return calculate;
  const { adapt, of, givenOnly } = adaptation;
  return (...variants) =>
    calculate(
      ...variants.map((variant, index) => {
        if (!of(index) || (givenOnly && variant.isArray())) return variant;
        return elementwise(formula, [variant], (value) => adapt(formula, value as BaseValueObject));
      }),
    );
}
