/** One text from elsewhere fills all selected cells, as one copied cell does: the grid puts it into the first. */
import type { ICellData, Nullable } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import {
  type ISetRangeValuesMutationParams,
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
} from "@univerjs/sheets";
import type { ISheetClipboardHook } from "@univerjs/sheets-ui";
import { putCell } from "../../workbook/book";
import { type Grid, workbookOf } from "../grid/grid";
import type { CellData } from "../grid/one-step";

type PasteText = NonNullable<ISheetClipboardHook["onPastePlainText"]>;

export function intoAllSelected({ injector }: Grid, paste: PasteText): PasteText {
  return (to, text, payload) => {
    const pasted = paste(to, text, payload);
    const { rows, cols } = to.range;
    const [row = 0, column = 0] = [rows[0], cols[0]];
    const sheet = workbookOf({ injector })?.getSheetBySheetId(to.subUnitId);
    const written = pasted.redos.find(({ id }) => id === SetRangeValuesMutation.id);
    const { cellValue } = (written?.params ?? {}) as Partial<ISetRangeValuesMutationParams>;
    const cell: Nullable<ICellData> = cellValue?.[row]?.[column];
    if (!sheet || !cell || rows.length * cols.length === 1) return pasted;
    const lexer = injector.get(LexerTreeBuilder);
    const cells: CellData = {};
    for (const down of rows)
      for (const across of cols) {
        const merged = sheet.getMergedCell(down, across);
        if (merged && (merged.startRow !== down || merged.startColumn !== across)) continue;
        const f = cell.f && lexer.moveFormulaRefOffset(cell.f, across - column, down - row);
        putCell(cells, down, across, structuredClone(f ? { ...cell, f } : cell));
      }
    const { id } = SetRangeValuesMutation;
    const params = { unitId: to.unitId, subUnitId: to.subUnitId, cellValue: cells };
    const undo = SetRangeValuesUndoMutationFactory(injector, params);
    return { redos: [{ id, params }], undos: [{ id, params: undo }] };
  };
}
