/** The order of spreadsheets: numbers, texts, FALSE and TRUE, errors; what is blank comes last either way. */
import { isError, type Value } from "../../workbook/book";

export type Direction = "ascending" | "descending";

/** In the person's language; capitals are small letters, and Run 10 comes after Run 9. */
const texts = new Intl.Collator(undefined, { numeric: true, sensitivity: "accent" });

/** A formula that answers with no text shows as a blank cell does. */
const isBlank = (value: Value) => value === null || value === "";

const kindOf = (value: Value) =>
  isError(value) ? 3 : ["number", "string", "boolean"].indexOf(typeof value);

function compare(one: Value, other: Value): number {
  if (typeof one === "string" && typeof other === "string") return texts.compare(one, other);
  const kinds = kindOf(one) - kindOf(other);
  return kinds !== 0 || isError(one) ? kinds : Number(one) - Number(other);
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
