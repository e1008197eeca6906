/**
 * Which rows SUBTOTAL and AGGREGATE leave out. Those that a filter hides are left out by every function of
 * SUBTOTAL, those that are hidden by hand by some: ECMA-376 Part 4 and OpenFormula 1.2. AGGREGATE leaves out
 * both or none of them, by its option: see natives/aggregate.
 */
import type { BooleanNumber, Injector, IRowData, Nullable, Worksheet } from "@univerjs/core";
import type { Book, Sheet } from "../workbook/book";
import { filteredRows } from "../workbook/filter";
import type { EngineFormula } from "./executor";

/** Custom data of a row that a filter hid. */
export const FILTERED = { filtered: true } as const;

export const isMarked = (row: Nullable<Partial<IRowData>>): boolean =>
  row?.custom?.filtered === FILTERED.filtered;

type HiddenRow = { readonly hd: BooleanNumber } | { readonly custom: typeof FILTERED };

/** The hidden rows of a sheet, as the grid has them. */
export function hiddenRowData(sheet: Sheet, tables: Book["tables"]): Record<number, HiddenRow> {
  const filtered = filteredRows(sheet, tables);
  return Object.fromEntries(
    (sheet.hiddenRows ?? []).map((row) => [
      row,
      filtered.has(row) ? { custom: FILTERED } : { hd: 1 as BooleanNumber },
    ]),
  );
}

/** Those of the rows from one to another that filters hide. */
export type FilteredRows = (sheetId: string, from: number, to: number) => readonly number[];

/**
 * Tells the engine which rows filters hide. It asks of each cell whether its row is among them: it gets a list
 * that knows without being gone through.
 */
export function leaveOutFiltered(
  { IFormulaCurrentConfigService }: EngineFormula,
  injector: Injector,
  filteredRows: FilteredRows,
): void {
  const config = injector.get(IFormulaCurrentConfigService);
  config.getFilteredOutRows = (_, sheetId, from, to) => {
    const rows = [...filteredRows(sheetId, from, to)];
    const known = new Set(rows);
    return Object.assign(rows, { includes: (row: number) => known.has(row) });
  };
}

/** The marked rows of a sheet, from one to another. */
export function markedRows(sheet: Nullable<Worksheet>, from: number, to: number): number[] {
  const manager = sheet?.getRowManager();
  const marked: number[] = [];
  for (let row = from; manager && row <= to; row++)
    if (isMarked(manager.getRow(row))) marked.push(row);
  return marked;
}
