/**
 * A formula that is opened in its cell or in the bar stands there as a person wrote it: with the names of its
 * tables, and B4# for what B4 spills. Once it is entered, typed-formulas.ts gives the grid its own form again.
 */
import type { ICellData, ICellDataForSheetInterceptor, Nullable } from "@univerjs/core";
import {
  AFTER_CELL_EDIT,
  BEFORE_CELL_EDIT,
  type ISheetLocation,
  SheetInterceptorService,
} from "@univerjs/sheets";
import type { Carried } from "../book/grid-book";
import type { Grid } from "../grid/grid";
import { anchorOf, formulaAt } from "../grid/seen-cells";

/** Ahead of all that the grid does with an entry. */
const FIRST = 100;

export function editAsWritten(grid: Grid): void {
  const { writeCellInterceptor } = grid.injector.get(SheetInterceptorService);
  type Handler = (cell: Cell, place: ISheetLocation) => Cell;

  // What the grid itself does when a formula is opened ends the chain: its answer is met behind the chain.
  const chain = writeCellInterceptor.fetchThroughInterceptors.bind(writeCellInterceptor);
  writeCellInterceptor.fetchThroughInterceptors = ((name: never, filter: never) => {
    const open = chain(name, filter) as Handler;
    if (name !== BEFORE_CELL_EDIT) return open;
    return ((cell, place) => asWritten(grid, open(cell, place), place)) satisfies Handler;
  }) as typeof chain;

  writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler: (entry, place, next) => {
      const { worksheet, row, col } = place;
      const anchor = anchorOf(grid, worksheet, row, col);
      const written = entry?.f && formulaAt(grid, worksheet, anchor.row, anchor.column);
      const raw = worksheet.getCellRaw(row, col);
      // Opened and left as it was, it is no entry.
      return written && entry.f === `=${written}` ? { ...raw } : next(withoutOldWords(entry, raw));
    },
  });
}

/** A formula that is typed over another says the same in other words, if it does: they are the ones that count. */
function withoutOldWords(entry: Nullable<ICellData>, raw: Nullable<ICellData>) {
  const { formula, ...kept } = (raw?.custom ?? {}) as Carried;
  return entry?.f && formula !== undefined ? { ...entry, custom: kept } : entry;
}

type Cell = ICellDataForSheetInterceptor | null | undefined;

function asWritten(grid: Grid, cell: Cell, { worksheet, row, col }: ISheetLocation): Cell {
  const anchor = anchorOf(grid, worksheet, row, col);
  // The grid takes a cell that something was spilled into for one of its own, where that has a look.
  const isFilled = anchor.row !== row || anchor.column !== col;
  if (!cell?.f && !isFilled) return cell;
  const written = formulaAt(grid, worksheet, anchor.row, anchor.column);
  if (written === undefined) return cell;
  return { ...cell, f: `=${written}`, ...(isFilled && { isInArrayFormulaRange: true }) };
}
