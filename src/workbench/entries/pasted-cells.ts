/** Cells that are pasted, each with the one that it was copied from. */
import type { ICellData, Worksheet } from "@univerjs/core";
import { SetRangeValuesMutation, SetRangeValuesUndoMutationFactory } from "@univerjs/sheets";
import {
  type ISheetClipboardHook,
  ISheetClipboardService,
  PREDEFINED_HOOK_NAME_PASTE,
} from "@univerjs/sheets-ui";
import { putCell } from "../../workbook/book";
import { type Grid, workbookOf } from "../grid/grid";
import type { CellData } from "../grid/one-step";

type PasteCells = NonNullable<ISheetClipboardHook["onPasteCells"]>;

export interface CellOn {
  readonly sheet: Worksheet;
  readonly row: number;
  readonly column: number;
}

export interface Pasted {
  readonly from: CellOn;
  readonly to: CellOn;
  readonly cell: ICellData;
  /** Whether another cell was copied along. */
  readonly copied: (row: number, column: number) => boolean;
}

/** `cellFor` gives what a cell becomes behind what the grid pastes, where that is something else. */
export function pasteBehind(
  grid: Grid,
  id: string,
  cellFor: (pasted: Pasted) => ICellData | undefined,
): void {
  const onPasteCells: PasteCells = (from, to, cells, { copyType, pasteType }) => {
    const workbook = workbookOf(grid);
    const source = from && workbook?.getSheetBySheetId(from.subUnitId);
    const target = workbook?.getSheetBySheetId(to.subUnitId ?? "");
    const plain = pasteType === PREDEFINED_HOOK_NAME_PASTE.DEFAULT_PASTE && copyType === "COPY";
    const cellValue: CellData = {};
    if (source && target && plain) {
      const { rows, cols } = from.range;
      const copied = (row: number, column: number) => rows.includes(row) && cols.includes(column);
      cells.forValue((row, column, cell) => {
        const fromRow = rows[row % rows.length];
        const fromColumn = cols[column % cols.length];
        const [toRow, toColumn] = [to.range.rows[row], to.range.cols[column]];
        if (fromRow === undefined || fromColumn === undefined) return;
        if (toRow === undefined || toColumn === undefined) return;
        const its = { sheet: source, row: fromRow, column: fromColumn };
        const there = { sheet: target, row: toRow, column: toColumn };
        const becomes = cellFor({ from: its, to: there, cell, copied });
        if (becomes) putCell(cellValue, toRow, toColumn, becomes);
      });
    }
    if (Object.keys(cellValue).length === 0) return { redos: [], undos: [] };
    const params = { unitId: to.unitId ?? "", subUnitId: to.subUnitId ?? "", cellValue };
    const undo = SetRangeValuesUndoMutationFactory(grid.injector, params);
    return {
      redos: [{ id: SetRangeValuesMutation.id, params }],
      undos: [{ id: SetRangeValuesMutation.id, params: undo }],
    };
  };
  grid.injector.get(ISheetClipboardService).addClipboardHook({ id, priority: 20, onPasteCells });
}
