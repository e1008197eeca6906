import type { Answer } from "./answer";
import type { Argument, Values } from "./argument";
import type { Cell, Cells } from "./cell";
import { attempt, type Formula, isNoValue } from "./invoke";
import { observer, type Told } from "./observer";
import { elementValues, overRanges } from "./over-ranges";
import { accepts, isQuantity, type Quantity } from "./quantity";
import { settle } from "./settle";

/** A function as a host calls it: the cells of each argument, then the invocation. */
export type CellFunction = (...given: unknown[]) => Answer;

/**
 * Lifts a formula of single numbers over ranges: element by element, a row and a column broadcast to a
 * grid, and a bad element spoils its own cell only. Arguments other than quantities (a unit, a shape) are
 * read once for the whole call.
 */
export function elementwise<const A extends readonly Argument<unknown>[]>(
  id: string,
  args: A,
  model: (...values: Values<A>) => number,
): CellFunction {
  const formula = model as Formula;
  const told: Told = {
    id,
    count: args.length,
    by: "cell",
    values: (given, row, column) => elementValues(args, given, row, column),
  };
  const slow: CellFunction = (...given) =>
    settle(told, given, () => overRanges(args, given, formula));
  if (!args.every(isQuantity)) return slow;

  // A sheet makes this call by the thousand: one sound number in each place, and nobody who watches.
  const quantities: readonly Quantity[] = args;
  const values = quantities.map(() => 0.5);
  return (...given) => {
    if (observer === undefined && readPlain(quantities, given, values)) {
      const value = attempt(formula, values);
      if (!isNoValue(value)) return [[value]];
    }
    return slow(...given);
  };
}

/** Reads the values where each argument is one sound number; false where anything needs a closer look. */
function readPlain(
  quantities: readonly Quantity[],
  given: readonly unknown[],
  values: number[],
): boolean {
  for (let i = 0; i < quantities.length; i += 1) {
    const quantity = quantities[i] as Quantity;
    const cells = given[i] as Cells | null | undefined;
    if (cells === null || cells === undefined) {
      if (quantity.fallback === undefined) return false;
      values[i] = quantity.fallback;
    } else {
      if (cells.length !== 1) return false;
      const row = cells[0] as readonly Cell[];
      const cell = row[0];
      if (row.length !== 1 || !accepts(quantity, cell)) return false;
      values[i] = cell;
    }
  }
  return true;
}
