/**
 * Whether what is typed right below a table is a new row of it. A total is none: taken in, it would add itself
 * up, and be counted by all that reads the table.
 */
import { holdsCell } from "../../workbook/areas";
import type { Book, Table, Value } from "../../workbook/book";
import { regionsOf } from "../../workbook/formula/regions";
import { isTotalOf } from "../../workbook/formula/totals";
import { repeats } from "./repeated-formula";

export interface Entry {
  readonly column: number;
  readonly value: Value;
  readonly formula?: string;
  /** Whether the formula names its own row as one of a table. */
  readonly ofRow?: boolean;
  /** What the formula would read if the table had the row. */
  readonly grown?: string;
}

export interface RowBelow {
  readonly table: Table;
  readonly row: number;
  readonly book: Book;
  /** What the table holds in a column. */
  readonly valuesOf: (column: number) => readonly Value[];
  readonly lastFormula: (column: number) => string | undefined;
}

/** The entries from left to right: a row says with the first of them what it is. */
export const isNewRow = (entries: readonly Entry[], below: RowBelow): boolean =>
  entries[0] !== undefined &&
  !isLabel(entries[0], below) &&
  !entries.some((entry) => isTotal(entry, below));

/** Such a word stands before a total that is still to come; nothing else tells it from a name. */
const total =
  /^(?:(?:grand |sub-?)?totals?(?!\p{L})|(?:sum|mean|average|median|count|min|max)(?:imum)?\s*:?$)/iu;

/** In a column of numbers no name begins so, nor ends so: "n/a" or "<0.5" is what was found. */
const totalOfNumbers = /^(?:sum|mean|average|median|count|min|max)(?:imum)?(?!\p{L})|^\p{L}.*:$/iu;

function isLabel({ column, value, formula }: Entry, { valuesOf }: RowBelow): boolean {
  if (typeof value !== "string" || formula !== undefined) return false;
  if (total.test(value.trim())) return true;
  const held = valuesOf(column).filter((one) => one !== null && one !== "");
  const numbers = held.filter((one) => typeof one === "number");
  return numbers.length * 2 > held.length && totalOfNumbers.test(value.trim());
}

function isTotal({ column, formula, ofRow, grown = "" }: Entry, below: RowBelow): boolean {
  if (formula === undefined || ofRow) return false;
  const { table, row, book } = below;
  const { area, sheet } = table;
  const last = below.lastFormula(column);
  if (last !== undefined && repeats(last)(formula, row - (area.row + area.rows - 1))) return false;
  const readsItself = (text: string) =>
    regionsOf(text, sheet, book).some(
      (its) => its.sheet === sheet && holdsCell(its.area, row, column),
    );
  return (
    isTotalOf(area, formula, { sheet, row, column }, book) ||
    (readsItself(grown) && !readsItself(formula))
  );
}
