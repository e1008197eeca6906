/**
 * Rows and columns that are put in take the look of the line before them as its cells hold it. The grid
 * hands them what is drawn: the colour that a rule gives to a number would stay on a blank cell, and be saved.
 */
import { ICommandService } from "@univerjs/core";
import {
  type IInsertColCommandParams,
  type IInsertRowCommandParams,
  InsertColCommand,
  InsertRowCommand,
} from "@univerjs/sheets";
import { type Grid, workbookOf } from "./grid";
import type { CellData } from "./one-step";

export function takeLookOfLineBefore(grid: Grid): void {
  grid.injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    const byRow = id === InsertRowCommand.id;
    if (!byRow && id !== InsertColCommand.id) return;
    const inserted = params as IInsertRowCommandParams | IInsertColCommandParams;
    const { subUnitId, range, cellValue } = inserted;
    const worksheet = workbookOf(grid)?.getSheetBySheetId(subUnitId);
    for (const [row, cells] of Object.entries((cellValue ?? {}) as CellData))
      for (const [column, cell] of Object.entries(cells)) {
        const before = byRow
          ? worksheet?.getCellRaw(range.startRow - 1, Number(column))
          : worksheet?.getCellRaw(Number(row), range.startColumn - 1);
        cell.s = before?.s ?? null;
      }
  });
}
