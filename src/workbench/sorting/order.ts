/** The order of SORT and of comparisons, errors behind it; what is blank comes last either way. */
import { order, type Plain } from "../../engine/natives/coercion";
import { isError, type Value } from "../../workbook/book";

export type Direction = "ascending" | "descending";

/**
 * A formula that answers with no text shows as a blank cell does. SORT puts it first, as a text; but who sorts
 * rows on a page would find the rows that are not filled in yet above all others.
 */
const isBlank = (value: Value) => value === null || value === "";

function compare(one: Value, other: Value): number {
  const errors = Number(isError(one)) - Number(isError(other));
  return errors !== 0 || isError(one) ? errors : order(one as Plain, other as Plain);
}

/** The rows by their values; those that are equal stay in the order that they had. */
export function inOrder(
  rows: readonly number[],
  valueIn: (row: number) => Value,
  direction: Direction,
): number[] {
  const sign = direction === "ascending" ? 1 : -1;
  const values = new Map(rows.map((row) => [row, valueIn(row)]));
  return [...rows].sort((a, b) => {
    const [one, other] = [values.get(a) ?? null, values.get(b) ?? null];
    const blanks = Number(isBlank(one)) - Number(isBlank(other));
    return blanks !== 0 || isBlank(one) ? blanks : sign * compare(one, other);
  });
}
