/** Formulas that people type, put into the form that the grid understands; as written they are kept beside. */
import { type ICellData, ICommandService } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from "@univerjs/sheets";
import { toGrid } from "../../engine/dialect";
import { readCells } from "../../engine/read-cells";
import { expandTables } from "../../engine/structured";
import type { Table } from "../../workbook/book";
import type { Carried } from "../book/grid-book";
import { tablesIn } from "../book/read-grid";
import { type Grid, workbookOf } from "../grid/grid";

export function translateTyped(grid: Grid): void {
  grid.injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== SetRangeValuesMutation.id) return;
    const { subUnitId, cellValue } = command.params as ISetRangeValuesMutationParams;
    const sheet = workbookOf(grid)?.getSheetBySheetId(subUnitId)?.getName();
    if (sheet === undefined) return;
    let tables: readonly Table[] | undefined;
    for (const [row, line] of Object.entries(cellValue ?? {}))
      for (const [column, cell] of Object.entries((line ?? {}) as Record<string, ICellData>)) {
        if (!cell?.f) continue;
        const written = cell.f.replace(/^=/, "");
        const hasTable = /[[\]]/.test(written);
        if (hasTable) tables ??= allTables(grid);
        const place = { sheet, row: Number(row), column: Number(column) };
        const expanded = hasTable ? expandTables(written, tables ?? [], place) : written;

        cell.f = toGrid(expanded);
        if (expanded !== written)
          cell.custom = { ...cell.custom, formula: written } satisfies Carried;
      }
  });
}

/** The tables of the workbook as it stands. */
export function allTables(grid: Grid): Table[] {
  const model = grid.injector.get(FormulaDataModel);
  const sheets = workbookOf(grid)?.getSheets() ?? [];
  return tablesIn(sheets.map((worksheet) => ({ worksheet, cells: readCells(model, worksheet) })));
}
