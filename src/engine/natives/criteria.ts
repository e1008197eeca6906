/**
 * Which cells of a range meet a criterion: ">=1.50", "Liner*", "<>", 0. The grid's engine takes "1.50"
 * for text, so that no number is as large, and finds no error by its name.
 *
 * Source: ECMA-376 part 1, 18.17.7 (COUNTIF and its kin) and OASIS OpenFormula, "Criterion"; from memory.
 */
import type { ArrayValueObject, BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { numberOf, order, type Plain, verdicts } from "./coercion";
import { wildcards } from "./wildcards";

type Test = (value: BaseValueObject) => boolean;

interface Criterion {
  /** Cells that are equal to one of these keys, found without a look at the others. */
  readonly key?: string;
  readonly test: Test;
}

const content = (value: BaseValueObject) => value.getValue() as Plain;
const keyOfNumber = (number: number) => `number ${Number(number.toPrecision(15))}`;
const keyOfText = (text: string) => `text ${text.toLowerCase()}`;

const not =
  (test: Test): Test =>
  (value) =>
    !test(value);

function criterionOf(formula: EngineFormula, given: BaseValueObject): Criterion {
  const { BooleanValueObject, ErrorValueObject, ERROR_TYPE_SET, NumberValueObject } = formula;

  /** What the words behind the operator mean. */
  function meant(words: string): BaseValueObject {
    const upper = words.trim().toUpperCase();
    if (upper === "TRUE" || upper === "FALSE") return BooleanValueObject.create(upper === "TRUE");
    if (ERROR_TYPE_SET.has(upper as never)) return ErrorValueObject.create(upper as never);
    const text = formula.StringValueObject.create(words);
    const number = upper === "" ? text : numberOf(formula, text);
    return number.isNumber() ? number : text;
  }

  function numberIn(value: BaseValueObject): number | undefined {
    const number = value.isString() ? numberOf(formula, value) : value;
    return number.isNumber() ? (number.getValue() as number) : undefined;
  }

  function equalTo(value: BaseValueObject): Criterion {
    if (value.isNumber()) {
      const key = keyOfNumber(content(value) as number);
      const test: Test = (cell) => {
        const number = numberIn(cell);
        return number !== undefined && keyOfNumber(number) === key;
      };
      return { key, test };
    }
    if (value.isString()) {
      const text = content(value) as string;
      const pattern = wildcards(text);
      if (pattern)
        return { test: (cell) => cell.isString() && pattern.test(String(content(cell))) };
      const key = keyOfText(text.replace(/~([*?~])/g, "$1"));
      return { key, test: (cell) => cell.isString() && keyOfText(String(content(cell))) === key };
    }
    return {
      test: (cell) =>
        cell.isError() === value.isError() &&
        cell.isBoolean() === value.isBoolean() &&
        content(cell) === content(value),
    };
  }

  const isBlank: Test = (cell) => cell.isNull();

  if (given.isNull()) return equalTo(NumberValueObject.create(0));
  if (!given.isString()) return equalTo(given);
  const [, operator = "", words = ""] =
    /^(<>|<=|>=|<|>|=)?(.*)$/s.exec(String(content(given))) ?? [];
  if (words === "") {
    if (operator === "") return { test: (cell) => isBlank(cell) || content(cell) === "" };
    if (operator === "=") return { test: isBlank };
    return { test: operator === "<>" ? not(isBlank) : () => false };
  }
  const value = meant(words);
  if (operator === "" || operator === "=") return equalTo(value);
  if (operator === "<>") return { test: not(equalTo(value).test) };
  const verdict = verdicts[operator] as (order: number) => boolean;
  return {
    test: (cell) =>
      !cell.isNull() &&
      !cell.isError() &&
      typeof content(cell) === typeof content(value) &&
      !value.isError() &&
      verdict(order(content(cell), content(value))),
  };
}

/** The places of each value in a range, for as long as the engine keeps the range. */
const indices = new WeakMap<ArrayValueObject, Map<string, number[]>>();

function indexOf(formula: EngineFormula, array: ArrayValueObject): Map<string, number[]> {
  const known = indices.get(array);
  if (known) return known;
  const index = new Map<string, number[]>();
  const put = (key: string, place: number) => {
    const places = index.get(key);
    if (places) places.push(place);
    else index.set(key, [place]);
  };
  const columns = array.getColumnCount();
  array.iterator((cell, row, column) => {
    if (!cell || cell.isNull() || cell.isError()) return;
    const place = row * columns + column;
    if (cell.isString()) put(keyOfText(String(content(cell))), place);
    const number = cell.isString() ? numberOf(formula, cell) : cell;
    if (number.isNumber()) put(keyOfNumber(number.getValue() as number), place);
  });
  indices.set(array, index);
  return index;
}

/** Places, counted row by row, of the cells that meet the criterion, in their order. */
export function placesOf(
  formula: EngineFormula,
  array: ArrayValueObject,
  given: BaseValueObject,
): readonly number[] {
  const { key, test } = criterionOf(formula, given);
  if (key !== undefined) return indexOf(formula, array).get(key) ?? [];
  const blank = formula.NullValueObject.create();
  const places: number[] = [];
  const columns = array.getColumnCount();
  array.iterator((cell, row, column) => {
    if (test(cell ?? blank)) places.push(row * columns + column);
  });
  return places;
}
