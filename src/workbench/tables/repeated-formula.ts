/** A formula that a column of a table repeats from row to row: a new row holds it, too. */
import type { Area } from "../../workbook/book";
import { shiftedFormula } from "../../workbook/formula/shared";

/** Whether another formula says, so many rows below, what this one says in its row. */
export function repeats(formula: string): (other: string, rows: number) => boolean {
  const shifted = shiftedFormula(formula);
  return (other, rows) => shifted(rows, 0).toLowerCase() === other.toLowerCase();
}

export interface Repeated {
  /** The rows that hold it. */
  readonly rows: readonly number[];
  /** The one of them to take it from. */
  readonly source: number;
}

/**
 * What the column says for rows that are put in before the row `at`: what most of its rows say, and the two
 * beside the place, as far as they hold a formula. So a value that somebody typed over, or another formula in the
 * first row, changes nothing, and where the rows differ nothing is made up.
 */
export function repeatedAt(
  at: number,
  { row: first, rows: count }: Pick<Area, "row" | "rows">,
  formulaIn: (row: number) => string | undefined,
): Repeated | undefined {
  const formulas = Array.from({ length: count }, (_, index) => formulaIn(first + index));
  const holding = [...formulas.keys()].filter((index) => formulas[index] !== undefined);
  const place = at - first;
  const apart = (index: number) => Math.abs(index - place + 0.5);
  const nearest = holding.reduce<number | undefined>(
    (one, other) => (one === undefined || apart(other) < apart(one) ? other : one),
    undefined,
  );
  if (nearest === undefined) return undefined;
  const says = repeats(formulas[nearest] as string);
  const same = holding.filter((index) => says(formulas[index] as string, index - nearest));
  const beside = holding.filter((index) => apart(index) < 1);
  if (same.length * 2 <= count || beside.some((index) => !same.includes(index))) return undefined;
  // Farthest from the place, where a formula that reads rows beside its own reads none that is new.
  const source = same.reduce((one, other) => (apart(other) > apart(one) ? other : one));
  return { rows: same.map((index) => first + index), source: first + source };
}
