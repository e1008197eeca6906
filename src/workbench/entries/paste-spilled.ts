/** Cells that a formula filled, copied without it, are pasted as values; with it, it fills the new ones. */
import type { ICellData, Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { SetRangeValuesMutation, SetRangeValuesUndoMutationFactory } from "@univerjs/sheets";
import {
  type ISheetClipboardHook,
  ISheetClipboardService,
  PREDEFINED_HOOK_NAME_PASTE,
} from "@univerjs/sheets-ui";
import { putCell } from "../../workbook/book";
import { type Grid, workbookOf } from "../grid/grid";
import type { CellData } from "../grid/one-step";
import { anchorOf } from "../grid/seen-cells";
import { patternAt } from "../view/shown-value";

type PasteCells = NonNullable<ISheetClipboardHook["onPasteCells"]>;

export function pasteSpilled(grid: Grid): void {
  const { injector } = grid;
  const onPasteCells: PasteCells = (from, to, cells, { copyType, pasteType }) => {
    const sheet = from && workbookOf(grid)?.getSheetBySheetId(from.subUnitId);
    const plain = pasteType === PREDEFINED_HOOK_NAME_PASTE.DEFAULT_PASTE && copyType === "COPY";
    const cellValue: CellData = {};
    if (sheet && plain)
      cells.forValue((row, column, cell) => {
        const [fromRow, toRow] = [
          from.range.rows[row % from.range.rows.length],
          to.range.rows[row],
        ];
        const fromColumn = from.range.cols[column % from.range.cols.length];
        const toColumn = to.range.cols[column];
        if (fromRow === undefined || fromColumn === undefined) return;
        if (toRow === undefined || toColumn === undefined) return;
        const anchor = anchorOf(grid, sheet, fromRow, fromColumn);
        if (from.range.rows.includes(anchor.row) && from.range.cols.includes(anchor.column)) return;
        putCell(cellValue, toRow, toColumn, spilledInto(grid, sheet, fromRow, fromColumn, cell));
      });
    if (Object.keys(cellValue).length === 0) return { redos: [], undos: [] };
    const params = { unitId: to.unitId ?? "", subUnitId: to.subUnitId ?? "", cellValue };
    const { id } = SetRangeValuesMutation;
    const undo = SetRangeValuesUndoMutationFactory(injector, params);
    return { redos: [{ id, params }], undos: [{ id, params: undo }] };
  };
  // Behind what the grid pastes, for which these cells are blank.
  injector
    .get(ISheetClipboardService)
    .addClipboardHook({ id: "dosewright.paste-spilled", priority: 20, onPasteCells });
}

/** The value that lies in a cell without being its own, in the look that it has there. */
function spilledInto(grid: Grid, sheet: Worksheet, row: number, column: number, cell: ICellData) {
  const model = grid.injector.get(FormulaDataModel);
  const { v, t } =
    model.getArrayFormulaCellData()[sheet.getUnitId()]?.[sheet.getSheetId()]?.[row]?.[column] ?? {};
  const pattern = patternAt(grid, sheet, row, column);
  const look = typeof cell.s === "object" ? cell.s : {};
  return { v, t, f: null, si: null, p: null, ...(pattern && { s: { ...look, n: { pattern } } }) };
}
