import { Refusal } from "../model/refusal";
import { ErrorInInput } from "./answer";
import type { Argument } from "./argument";
import { type Cell, isBlank, isError, isOmitted, plainValue, usedRows } from "./cell";

/** A cell of a table: what is wrong with it is handed on, to be thrown where the cell is needed. */
export type TablePart = string | number | boolean | null | ErrorInInput | Refusal;

const NO_PLAIN_VALUE = "A cell of the table holds no plain value. Give a number or a text in it.";

/** A table with labels of its own (own additives); null where it is left out. Blank rows at the end are cut. */
export function optionalTable(name: string): Argument<readonly (readonly TablePart[])[] | null> {
  return {
    name,
    read: (cells) => {
      if (cells === null || isOmitted(cells)) return null;
      return cells.slice(0, usedRows(cells)).map((row) => row.map(part));
    },
  };
}

function part(cell: Cell): TablePart {
  const value = plainValue(cell);
  if (isError(value)) return new ErrorInInput(value);
  if (isBlank(value)) return null;
  if (typeof value === "string" || typeof value === "boolean") return value;
  return typeof value === "number" ? value : new Refusal("impossible input", NO_PLAIN_VALUE);
}
