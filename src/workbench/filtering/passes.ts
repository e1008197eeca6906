/** Whether a cell is one that a filter shows, as spreadsheets take its criterion. */
import { order } from "../../engine/natives/coercion";
import { unescaped, wildcards } from "../../engine/natives/wildcards";
import type { Value } from "../../workbook/book";
import { partsOfSerial } from "../../workbook/dates";
import type { Condition, Criterion, DateParts } from "../../workbook/filter";

export interface SeenCell {
  readonly value: Value;
  /** As the cell shows it. */
  readonly text: string;
  readonly isDate: boolean;
}

export const isBlank = ({ value }: SeenCell): boolean => value === null || value === "";

/** Numbers stand for themselves; a space, or nothing, for no content. */
const numberOf = (text: string) => (text.trim() === "" ? Number.NaN : Number(text));

export type Test = (cell: SeenCell) => boolean;

/** Undefined for a kind that is not understood. */
export function testOf(criterion: Criterion): Test | undefined {
  if (criterion.kind === "other") return undefined;
  if (criterion.kind === "conditions") {
    const tests = criterion.conditions.map(conditionTest);
    if (criterion.all) return (cell) => tests.every((test) => test(cell));
    return (cell) => tests.some((test) => test(cell));
  }
  const texts = new Set(criterion.texts.map((text) => text.toLowerCase()));
  const numbers = new Set(criterion.texts.map(numberOf));
  const dates = new Set(criterion.dates.map((parts) => parts.join("-")));
  return (cell) => {
    if (isBlank(cell)) return criterion.blank;
    const { value, text, isDate } = cell;
    if (texts.has(text.toLowerCase())) return true;
    if (typeof value !== "number") return false;
    return numbers.has(value) || (isDate && isAmong(partsOfSerial(value), dates));
  };
}

const isAmong = (parts: DateParts, dates: ReadonlySet<string>) =>
  parts.some((_, at) => dates.has(parts.slice(0, at + 1).join("-")));

function conditionTest({ operator, value }: Condition): Test {
  if (operator === "equal") return equals(value);
  if (operator === "notEqual") {
    const isEqual = equals(value);
    return (cell) => !isEqual(cell);
  }
  const limit = numberOf(value);
  return (cell) => {
    const order = Number.isNaN(limit) ? textOrder(cell, value) : numberOrder(cell, limit);
    if (operator === "greaterThan") return order > 0;
    if (operator === "greaterThanOrEqual") return order >= 0;
    return operator === "lessThan" ? order < 0 : order <= 0;
  };
}

/** Not a number where the two cannot be compared: then no condition holds. */
const numberOrder = ({ value }: SeenCell, limit: number) =>
  typeof value === "number" ? value - limit : Number.NaN;

const textOrder = ({ value }: SeenCell, limit: string) =>
  typeof value === "string" && value !== "" ? order(value, limit) : Number.NaN;

/** Patterns are for texts alone: a number has no parts. */
function equals(wanted: string): Test {
  if (wanted.trim() === "") return isBlank;
  const number = numberOf(wanted);
  const pattern = wildcards(wanted);
  if (pattern)
    return ({ value, text }) => value !== null && typeof value !== "number" && pattern.test(text);
  const plain = unescaped(wanted).toLowerCase();
  return ({ value, text }) =>
    typeof value === "number" && !Number.isNaN(number)
      ? value === number
      : text.toLowerCase() === plain;
}
