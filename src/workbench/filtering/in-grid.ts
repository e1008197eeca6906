/** Makes the grid leave out the rows that filters hide: what it paints, computes, copies and deletes. */
import { ICommandService } from "@univerjs/core";
import * as formula from "@univerjs/engine-formula";
import {
  INTERCEPTOR_POINT,
  RemoveRowByRangeCommand,
  SheetInterceptorService,
} from "@univerjs/sheets";
import { SheetsRenderService } from "@univerjs/sheets-ui";
import { leaveOutFiltered } from "../../engine/hidden-rows";
import { type Grid, workbookOf } from "../grid/grid";
import { asOneStep } from "../grid/one-step";
import { type FilteredSheet, type Filters, SET_FILTERS } from "./filters";

/** The grid's parts are there with its first workbook. */
export function filterInGrid(grid: Grid, filters: Filters): void {
  const { injector } = grid;
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.ROW_FILTERED, {
    handler: (filtered, { worksheet, row }, next) =>
      filtered || filters.isFiltered(worksheet, row) || next(filtered),
  });
  const sheetAt = (sheetId: string) => workbookOf(grid)?.getSheetBySheetId(sheetId);
  leaveOutFiltered(formula, injector, (sheetId, from, to) =>
    filters.filteredRows(sheetAt(sheetId), from, to),
  );
  injector.get(SheetsRenderService).registerSkeletonChangingMutations(SET_FILTERS);
  injector.get(formula.IActiveDirtyManagerService).register(SET_FILTERS, {
    commandId: SET_FILTERS,
    getDirtyData: ({ params }) => {
      const { unitId, subUnitId } = params as FilteredSheet;
      const sheet = sheetAt(subUnitId);
      const range = {
        startRow: 0,
        startColumn: 0,
        endRow: (sheet?.getRowCount() ?? 1) - 1,
        endColumn: (sheet?.getColumnCount() ?? 1) - 1,
      };
      return {
        dirtyRanges: [{ unitId, sheetId: subUnitId, range }],
        clearDependencyTreeCache: { [unitId]: { [subUnitId]: "1" } },
      };
    },
  });
  removeShownRows(grid);
}

interface RemoveRows {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly range: { readonly startRow: number; readonly endRow: number };
}

/**
 * The grid removes only the rows that show, as every spreadsheet does, but moves formulas as if all of them
 * went: so the rows that stand together are removed by themselves, from the last on.
 */
function removeShownRows(grid: Grid): void {
  const commands = grid.injector.get(ICommandService);
  const execute = commands.syncExecuteCommand.bind(commands);
  commands.syncExecuteCommand = (id, params, options) => {
    if (id !== RemoveRowByRangeCommand.id) return execute(id, params, options);
    const asked = params as unknown as RemoveRows;
    const sheet = workbookOf(grid)?.getSheetBySheetId(asked.subUnitId);
    const runs: { startRow: number; endRow: number }[] = [];
    for (let row = asked.range.startRow; row <= asked.range.endRow; row++) {
      if (sheet?.getRowFiltered(row)) continue;
      const last = runs.at(-1);
      if (last?.endRow === row - 1) last.endRow = row;
      else runs.push({ startRow: row, endRow: row });
    }
    let isDone = true;
    asOneStep(grid, () => {
      for (const run of runs.reverse())
        isDone &&= execute(id, { ...asked, range: { ...asked.range, ...run } } as never, options);
    });
    return isDone as never;
  };
}
