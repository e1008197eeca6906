import type { Answer } from "./answer";
import type { Argument, Values } from "./argument";
import type { Formula } from "./invoke";
import type { Told } from "./observer";
import { elementValues, overRanges } from "./over-ranges";
import { plainly } from "./plainly";
import { isQuantity } from "./quantity";
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
  return args.every(isQuantity) ? plainly(args, formula, slow) : slow;
}
