import { type Cell, isError, type Sheet } from "../book";
import type { FunctionNames } from "../formula/stored-form";
import type { CellEdit } from "../patch/edits";
import { patchSheet } from "../patch/sheet-patch";
import { cellsInOrder } from "./sheet-cells";

/** What the package cannot say: a text as the result of a formula that it might take for a number, an error, no value at all. */
const isUnsaid = ({ value, formula, spilled }: Cell): boolean =>
  isError(value) ||
  (value === null && formula !== undefined) ||
  (typeof value === "string" && (formula !== undefined || spilled === true));

/** The XML of a new sheet with those values that the package could not write. */
export function withSavedValues(
  path: string,
  xml: string,
  sheet: Sheet,
  names: FunctionNames,
): string {
  const edits = new Map<number, Map<number, CellEdit>>();
  for (const [row, column, cell] of cellsInOrder(sheet)) {
    if (!isUnsaid(cell)) continue;
    const line = edits.get(row) ?? new Map<number, CellEdit>();
    edits.set(row, line.set(column, { value: cell.value }));
  }
  if (edits.size === 0) return xml;
  return patchSheet(path, xml, edits, { names, dynamicMark: undefined }).xml;
}
