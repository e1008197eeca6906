/**
 * Which rows SUBTOTAL and AGGREGATE leave out. Those that a filter hides are left out by every one of their
 * functions, those that are hidden by hand by some: ECMA-376 Part 4 and OpenFormula 1.2, each at SUBTOTAL.
 */
import type { BooleanNumber, Injector, IRowData, Nullable } from "@univerjs/core";
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

/** Tells the engine which rows filters hide. */
export const leaveOutFiltered = (
  { ISheetRowFilteredService }: EngineFormula,
  injector: Injector,
  isFiltered: (sheetId: string, row: number) => boolean,
): void =>
  injector.get(ISheetRowFilteredService).register((_, sheetId, row) => isFiltered(sheetId, row));
