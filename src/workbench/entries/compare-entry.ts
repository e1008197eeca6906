/** An entry against what its rule allows, once every formula of the rule has its value. */
import { isError, type Value } from "../../workbook/book";
import type { Comparison } from "../../workbook/sheet-rules";

/** Small letters are capitals, as in a spreadsheet's own comparison. */
export const sameEntry = (choice: Value, entry: Value) =>
  typeof choice === "string" && typeof entry === "string"
    ? choice.toLowerCase() === entry.toLowerCase()
    : choice === entry;

/** A formula that gives an error forbids, as does 0; a text does not say no. */
export const holds = (value: Value) => !isError(value) && value !== false && value !== 0;

/** A bound that is no number (its cell fails, or holds a word) bounds nothing; a blank one counts as 0. */
const number = (bound: Value, otherwise: number) =>
  typeof bound === "number" ? bound : bound === null ? 0 : otherwise;

const within = (value: number, from: Value, to: Value) =>
  value >= number(from, -Infinity) && value <= number(to, Infinity);

export const compares: Record<Comparison, (value: number, from: Value, to: Value) => boolean> = {
  between: within,
  notBetween: (value, from, to) => value < number(from, Infinity) || value > number(to, -Infinity),
  equal: (value, from) => value === number(from, value),
  notEqual: (value, from) => value !== number(from, Number.NaN),
  greaterThan: (value, from) => value > number(from, -Infinity),
  greaterThanOrEqual: (value, from) => value >= number(from, -Infinity),
  lessThan: (value, from) => value < number(from, Infinity),
  lessThanOrEqual: (value, from) => value <= number(from, Infinity),
};
