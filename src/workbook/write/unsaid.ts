import { type Book, type Cell, isError, type Sheet } from "../book";
import { cellsOf } from "../cells-within";
import { isActive } from "../filter";
import type { FunctionNames } from "../formula/stored-form";
import type { CellEdit, LookOf } from "../patch/edits";
import { patchFrame } from "../patch/frame-patch";
import type { LineEdit } from "../patch/layout-edits";
import { patchSheet } from "../patch/sheet-patch";

/** What the package cannot say: a text as the result of a formula that it might take for a number, an error, no value at all. */
const isUnsaid = ({ value, formula, spilled }: Cell): boolean =>
  isError(value) ||
  (value === null && formula !== undefined) ||
  (typeof value === "string" && (formula !== undefined || spilled === true));

const hidden = (lines: readonly number[] = []): Map<number, LineEdit> =>
  new Map(lines.map((line) => [line, { hidden: true }]));

interface Unsaid {
  readonly names: FunctionNames;
  readonly styles: Book["styles"];
  readonly lookOf: LookOf;
}

/** The XML of a new sheet with those values, hidden lines, looks of columns and filters that the package could not write. */
export function withUnsaid(
  path: string,
  xml: string,
  sheet: Sheet,
  { names, lookOf, styles }: Unsaid,
): string {
  const edits = new Map<number, Map<number, CellEdit>>();
  for (const [row, column, cell] of cellsOf(sheet)) {
    if (!isUnsaid(cell)) continue;
    const line = edits.get(row) ?? new Map<number, CellEdit>();
    edits.set(row, line.set(column, { value: cell.value }));
  }
  const [rows, columns] = [hidden(sheet.hiddenRows), hidden(sheet.hiddenColumns)];
  for (const [column, key] of Object.entries<string>(sheet.columnStyles ?? {})) {
    const look = { before: {}, after: styles[key] ?? {} };
    columns.set(Number(column), { ...columns.get(Number(column)), look });
  }
  const filter = sheet.filter && isActive(sheet.filter) ? { filter: sheet.filter } : undefined;
  if (edits.size + rows.size + columns.size === 0 && !filter) return xml;
  const patched = patchSheet(path, xml, edits, { names, dynamicMark: undefined }, rows).xml;
  if (columns.size === 0 && !filter) return patched;
  return patchFrame(path, patched, { rows, columns, ...filter }, lookOf);
}
