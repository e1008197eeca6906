/** How a spreadsheet takes a value for another kind of value, and orders values of different kinds. */
import type { BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { textOfNumber } from "./text-of-number";

/** Numbers that agree to about fifteen digits are equal; whole numbers are compared as they are. */
const NEARLY = 2 ** -48;

function sameNumber(one: number, other: number): boolean {
  if (one === other) return true;
  if (Number.isSafeInteger(one) && Number.isSafeInteger(other)) return false;
  return Math.abs(one - other) < NEARLY * Math.min(Math.abs(one), Math.abs(other));
}

export type Plain = number | string | boolean;

const rank = (value: Plain) => ["number", "string", "boolean"].indexOf(typeof value);

/** Letters with accents stand by their own; the language is fixed, so that a workbook has one order everywhere. */
const letters = new Intl.Collator("en", { sensitivity: "accent" });

/**
 * Below 0, 0 or above 0: numbers, then text whatever its case, then FALSE and TRUE. Text goes letter by letter,
 * "Run 10" before "Run 9": so comparisons and SORT do in every spreadsheet. By it rows are sorted by hand, too.
 */
export function order(one: Plain, other: Plain): number {
  if (typeof one !== typeof other) return rank(one) - rank(other);
  if (typeof one === "number")
    return sameNumber(one, other as number) ? 0 : one - (other as number);
  if (typeof one === "boolean") return Number(one) - Number(other);
  const [left, right] = [one.toLowerCase(), (other as string).toLowerCase()];
  if (left === right) return 0;
  return letters.compare(left, right) || (left < right ? -1 : 1);
}

/** What each operator makes of an order. */
export const verdicts: Readonly<Record<string, (order: number) => boolean>> = {
  "=": (order) => order === 0,
  "<>": (order) => order !== 0,
  "<": (order) => order < 0,
  "<=": (order) => order <= 0,
  ">": (order) => order > 0,
  ">=": (order) => order >= 0,
};

export function textOf(value: BaseValueObject): string {
  if (value.isNull()) return "";
  const content = value.getValue();
  if (typeof content === "number") return textOfNumber(content);
  if (typeof content === "boolean") return content ? "TRUE" : "FALSE";
  return String(content);
}

/** Forms that a program takes for a number and a spreadsheet does not. */
const foreignNumber = /^\s*[-+]?(?:0[xbo]|infinity)/i;

/** The number that stands in a text, a blank or a Boolean; #VALUE! where none does. */
export function numberOf(formula: EngineFormula, value: BaseValueObject): BaseValueObject {
  if (value.isNumber()) return value;
  if (value.isString() && foreignNumber.test(String(value.getValue())))
    return formula.ErrorValueObject.create(formula.ErrorType.VALUE);
  return value.convertToNumberObjectValue();
}
