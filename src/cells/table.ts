import { ErrorInInput } from "./answer";
import type { Argument } from "./argument";
import { type Cell, isBlank, isError, isOmitted, plainValue, usedRows } from "./cell";

/** A cell of a table: an error that stands in it is handed on, to be thrown where the cell is needed. */
export type TablePart = string | number | boolean | null | ErrorInInput;

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
  return typeof value === "string" || typeof value === "boolean" ? value : Number(value);
}
