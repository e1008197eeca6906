/** Cells that a formula filled, copied without it, are pasted as values; with it, it fills the new ones. */
import type { ICellData } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { Grid } from "../grid/grid";
import { anchorOf } from "../grid/seen-cells";
import { patternAt } from "../view/shown-value";
import { type CellOn, pasteBehind } from "./pasted-cells";

/** The grid takes these cells for blank ones. */
export function pasteSpilled(grid: Grid): void {
  pasteBehind(grid, "dosewright.paste-spilled", ({ from, cell, copied }) => {
    const anchor = anchorOf(grid, from.sheet, from.row, from.column);
    return copied(anchor.row, anchor.column) ? undefined : spilledInto(grid, from, cell);
  });
}

/** The value that lies in a cell without being its own, in the look that it has there. */
function spilledInto(grid: Grid, { sheet, row, column }: CellOn, cell: ICellData): ICellData {
  const model = grid.injector.get(FormulaDataModel);
  const { v, t } =
    model.getArrayFormulaCellData()[sheet.getUnitId()]?.[sheet.getSheetId()]?.[row]?.[column] ?? {};
  const pattern = patternAt(grid, sheet, row, column);
  const look = typeof cell.s === "object" ? cell.s : {};
  return { v, t, f: null, si: null, p: null, ...(pattern && { s: { ...look, n: { pattern } } }) };
}
