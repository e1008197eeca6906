import { type Book, type Cell, isError } from "../../workbook/book";
import { cellsOf } from "../../workbook/cells-within";
import { ourNames, usesOurs } from "../../workbook/formula/ours";
import type { FunctionNames } from "../../workbook/formula/stored-form";
import { tokensOf } from "../../workbook/formula/tokens";

/** A cell that holds a formula, with what a recalculation has to know of it. */
export interface FormulaCell {
  readonly key: string;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly cell: Cell & { readonly formula: string };
  /** One of our functions is in it, or in a name that it uses. */
  readonly ours: boolean;
  /** The file holds a value for it. One that its last program did not know, or waited for, is none. */
  readonly saved: boolean;
  /** It looks at the clock, at chance, or at the program that shows it: it has no value of its own. */
  readonly fleeting: boolean;
}

const fleetingFunctions: ReadonlySet<string> = new Set([
  "NOW",
  "TODAY",
  "RAND",
  "RANDBETWEEN",
  "RANDARRAY",
  "CELL",
  "INFO",
]);

const unfinished: ReadonlySet<string> = new Set(["#NAME?", "#GETTING_DATA"]);

export const cellKey = (sheet: string, row: number, column: number): string =>
  `${sheet.toLowerCase()}!${row},${column}`;

export function formulaCells(book: Book, names: FunctionNames): FormulaCell[] {
  const namesWithOurs = ourNames(book, names);
  const found: FormulaCell[] = [];
  for (const sheet of book.sheets)
    for (const [row, column, cell] of cellsOf(sheet)) {
      const { formula } = cell;
      if (formula === undefined) continue;
      found.push({
        key: cellKey(sheet.name, row, column),
        sheet: sheet.name,
        row,
        column,
        cell: { ...cell, formula },
        saved: !(cell.value === null || (isError(cell.value) && unfinished.has(cell.value.error))),
        ours: usesOurs(formula, names, namesWithOurs),
        fleeting: tokensOf(formula).some(
          ({ kind, text }) => kind === "function" && fleetingFunctions.has(text.toUpperCase()),
        ),
      });
    }
  return found;
}
