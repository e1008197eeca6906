import { ICommandService, type Worksheet } from "@univerjs/core";
import {
  SetRangeValuesMutation,
  SetWorksheetActiveOperation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { areaOf } from "../../engine/ranges";
import type { Computed } from "../../workbench/grid/computed";
import { type Grid, workbookOf } from "../../workbench/grid/grid";
import { anchorOf, valueAt } from "../../workbench/grid/seen-cells";
import { messageAt } from "../../workbench/status/message-at";
import { isError } from "../../workbook/book";
import type { Selection, Stop } from "../host";
import { addressIn, sheetCell } from "./sheet";

/** What is selected; undefined where no cell is. */
export function readSelection(grid: Grid): Selection | undefined {
  const worksheet = workbookOf(grid)?.getActiveSheet();
  const last = grid.injector.get(SheetsSelectionsService).getCurrentLastSelection();
  if (!worksheet || !last?.primary) return undefined;
  const { startRow, startColumn, endRow, endColumn } = last.range;
  const { actualRow: row, actualColumn: column, isMerged } = last.primary;
  const cell = {
    ...sheetCell(grid, worksheet, row, column),
    ...spilledFrom(grid, worksheet, row, column),
    ...reasonAt(grid, worksheet, row, column),
  };
  const alone = isMerged && startRow === row && startColumn === column;
  const merged = alone && endRow === last.primary.endRow && endColumn === last.primary.endColumn;
  return { address: merged ? cell.address : addressIn(worksheet, areaOf(last.range)), cell };
}

function spilledFrom(grid: Grid, worksheet: Worksheet, row: number, column: number) {
  const anchor = anchorOf(grid, worksheet, row, column);
  if (anchor.row === row && anchor.column === column) return {};
  return { spilledFrom: sheetCell(grid, worksheet, anchor.row, anchor.column) };
}

function reasonAt(grid: Grid, worksheet: Worksheet, row: number, column: number) {
  const value = valueAt(grid, worksheet, row, column);
  const reason = isError(value) && messageAt(grid, worksheet, row, column, value.error);
  return reason ? { reason } : {};
}

/** See SheetHost.watchSelection. Events come in bursts; each burst is told once, and only what is new. */
export function watchSelection(
  grid: Grid,
  computed: Computed,
  listener: (selection: Selection | undefined) => void,
): Stop {
  let told: string | undefined;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const tell = () => {
    waiting = undefined;
    const selection = readSelection(grid);
    const now = JSON.stringify(selection ?? null);
    if (now === told) return;
    told = now;
    listener(selection);
  };
  const follow = () => {
    waiting ??= setTimeout(tell, 0);
  };
  const { injector } = grid;
  const selected = injector.get(SheetsSelectionsService).selectionChanged$.subscribe(follow);
  const written = injector.get(ICommandService).onCommandExecuted(({ id }) => {
    // Another sheet brings its own selection, which is no change to the grid.
    if (id === SetRangeValuesMutation.id || id === SetWorksheetActiveOperation.id) follow();
  });
  const stopComputed = computed.watch(follow);
  follow();
  return () => {
    clearTimeout(waiting);
    selected.unsubscribe();
    written.dispose();
    stopComputed();
  };
}
