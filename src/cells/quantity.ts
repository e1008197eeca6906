import { impossible } from "../model/refusal";
import { ErrorInInput } from "./answer";
import type { Argument } from "./argument";
import { type Cell, type Cells, isBlank, isError, isOmitted, plainValue } from "./cell";
import { shorten } from "./shorten";
import { singleCell } from "./single-cell";

/** The numbers that an argument allows, as a closed interval, and the words that say so. */
export interface Limits {
  readonly least: number;
  readonly most: number;
  readonly words: string;
  /** Whether only whole numbers are allowed. */
  readonly whole?: boolean;
}

const SMALLEST_ABOVE_ZERO = Number.MIN_VALUE;
const LARGEST_BELOW_ONE = 1 - Number.EPSILON / 2;

export const anyNumber: Limits = {
  least: -Number.MAX_VALUE,
  most: Number.MAX_VALUE,
  words: "a number",
};

export const notNegative: Limits = { least: 0, most: Number.MAX_VALUE, words: "0 or more" };

export const aboveZero: Limits = {
  least: SMALLEST_ABOVE_ZERO,
  most: Number.MAX_VALUE,
  words: "a number above 0",
};

function between(least: number, most: number): Limits {
  return { least, most, words: `${least} to ${most}` };
}

export function wholeBetween(least: number, most: number): Limits {
  return { least, most, words: `a whole number from ${least} to ${most}`, whole: true };
}

const FRACTION_HINT = "e.g. 0.03 for 3 %";

/** Shares, retentions, closures: 0 to 1, both included. */
export const upToOne: Limits = {
  least: 0,
  most: 1,
  words: `a fraction from 0 to 1, ${FRACTION_HINT}`,
};

/** A fraction that something is divided by: above 0, up to 1 or to the narrower bound that nature sets. */
export function aboveZeroUpTo(most: number): Limits {
  return {
    least: SMALLEST_ABOVE_ZERO,
    most,
    words: `a fraction above 0, up to ${most}, ${FRACTION_HINT}`,
  };
}

/** Consistency of stock. Thicker than 0.25 no furnish flows: a larger number is a percentage typed for a fraction. */
export const stockConsistency = aboveZeroUpTo(0.25);

/** Oxygen demand in g/g. No substance takes more than hydrogen does, 8 g/g: a larger number is a slip. */
export const oxygenDemand = between(0, 8);

/** The chance of a false alarm that a trial may have. */
export const falseAlarms: Limits = {
  least: 0.0001,
  most: 0.5,
  words: "a fraction from 0.0001 to 0.5, e.g. 0.05 for 5 %",
};

/** A fraction that leaves something over: 0 or more, below 1. */
export const belowOne: Limits = {
  least: 0,
  most: LARGEST_BELOW_ONE,
  words: `a fraction from 0, below 1, ${FRACTION_HINT}`,
};

/** A fraction strictly between nothing and all. */
export const insideUnit: Limits = {
  least: SMALLEST_ABOVE_ZERO,
  most: LARGEST_BELOW_ONE,
  words: `a fraction above 0 and below 1, ${FRACTION_HINT}`,
};

/** No answer is longer, and no count is larger, than this many rows. */
export const MOST_ROWS = 100_000;
/** A seed, or a stream of one, is a whole number of 32 bits. */
export const LARGEST_SEED = 4_294_967_295;

/** One number with its unit. Where a function works over ranges, each cell is read so. */
export interface Quantity<T extends number | undefined = number> extends Argument<T> {
  readonly kind: "quantity";
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly whole: boolean;
  readonly allowed: string;
  readonly optional: boolean;
  /** What stands for an optional argument that is left out. */
  readonly fallback: T | undefined;
}

/** A number that must be given. */
export function quantity(name: string, unit: string, limits: Limits): Quantity {
  return makeQuantity<number>(name, unit, limits, { optional: false });
}

/** A number that may be left out: the default stands for it. */
export function optionalQuantity(
  name: string,
  unit: string,
  limits: Limits,
  fallback: number,
): Quantity {
  return makeQuantity<number>(name, unit, limits, { optional: true, fallback });
}

/** A number that may be left out, and nothing stands for it. */
export function quantityOrNone(
  name: string,
  unit: string,
  limits: Limits,
): Quantity<number | undefined> {
  return makeQuantity<number | undefined>(name, unit, limits, { optional: true });
}

/** A count, a seed, a number of steps: whole numbers only. */
export function wholeNumber(
  name: string,
  least: number,
  most: number,
  fallback?: number,
): Quantity {
  const optional = fallback !== undefined;
  return makeQuantity<number>(name, "", wholeBetween(least, most), { optional, fallback });
}

interface QuantityOptions<T> {
  readonly optional: boolean;
  readonly fallback?: T | undefined;
}

function makeQuantity<T extends number | undefined>(
  name: string,
  unit: string,
  { least, most, words, whole = false }: Limits,
  { optional, fallback }: QuantityOptions<T>,
): Quantity<T> {
  const isDimensionless = unit === "" || unit === "fraction";
  const allowed = isDimensionless ? words : `${words} [${unit}]`;
  return {
    kind: "quantity",
    name,
    unit,
    least,
    most,
    whole,
    allowed,
    optional,
    fallback,
    read(cells) {
      if (optional && isOmitted(cells)) return fallback as T;
      return readSingle(this as Quantity, cells) as T;
    },
  };
}

export function isQuantity(argument: Argument<unknown>): argument is Quantity {
  return (argument as Partial<Quantity>).kind === "quantity";
}

/** Whether a cell is a plain number that the quantity allows: the common case, without further questions. */
export function accepts(quantity: Quantity, cell: Cell): cell is number {
  return (
    typeof cell === "number" &&
    cell >= quantity.least &&
    cell <= quantity.most &&
    (!quantity.whole || Number.isInteger(cell))
  );
}

/** A number as people and other programs write it: "3 %", "1.234,5", "1 234", "2e-3". */
const LOOKS_LIKE_NUMBER = /^[+−-]?[.,]?\d[\d.,'\s]*(?:e[+-]?\d+)?\s*%?$/i;

/** The number in a cell, or a refusal that names the argument, what the cell holds, and what is allowed. */
export function readNumber(quantity: Quantity, cell: Cell, place = ""): number {
  const value = plainValue(cell);
  if (accepts(quantity, value)) return value;
  if (isError(value)) throw new ErrorInInput(value);
  const subject = `${quantity.name}${place}`;
  const give = `Give ${quantity.allowed}.`;
  if (typeof value === "number") {
    if (value === 0) impossible(`${subject} is 0 or blank. ${give}`);
    impossible(`${subject} is ${refusedFigure(quantity, value)}. ${give}`);
  }
  if (isBlank(value)) impossible(`${subject} is blank. ${give}`);
  if (typeof value === "boolean") {
    impossible(`${subject} is ${value ? "TRUE" : "FALSE"}, not a number. ${give}`);
  }
  if (typeof value === "string") {
    impossible(
      LOOKS_LIKE_NUMBER.test(value.trim())
        ? `${subject} is the text "${shorten(value)}" that looks like a number: convert the column. ${give}`
        : `${subject} is the text "${shorten(value)}". ${give}`,
    );
  }
  impossible(`${subject} is no plain value. ${give}`);
}

/** Six figures, unless rounding would show a number that is allowed: 1.0000001 is not 1. */
function refusedFigure(quantity: Quantity, value: number): string {
  const rounded = String(Number(value.toPrecision(6)));
  return accepts(quantity, Number(rounded)) ? String(value) : rounded;
}

function readSingle(quantity: Quantity, cells: Cells | null): number {
  if (cells === null || isOmitted(cells)) {
    impossible(`${quantity.name} is missing. Give ${quantity.allowed}.`);
  }
  return readNumber(quantity, singleCell(quantity.name, cells));
}
