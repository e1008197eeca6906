/**
 * Keys that go farther than to the next cell: by a page, to the ends of a row, to the first cell and the last
 * one. With Shift the cells on the way are selected. The grid has none of them.
 */
import { CommandType, ICommandService, type IRange, type Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { IRenderManagerService, SHEET_VIEWPORT_KEY } from "@univerjs/engine-render";
import {
  SelectionMoveType,
  SetSelectionsOperation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import {
  SetScrollRelativeCommand,
  SheetSkeletonManagerService,
  whenSheetEditorFocused,
} from "@univerjs/sheets-ui";
import { MetaKeys } from "@univerjs/ui";
import { readValue, spilledRanges } from "../../engine/read-cells";
import { type Grid, workbookOf } from "../grid/grid";
import { scrollToCell } from "../view/scroll-to-cell";
import { type FarMove, farFrom, type Place, type SeenLines } from "./far-moves";
import { END, HOME, leadBy, PAGE_DOWN, PAGE_UP, type Way } from "./shortcuts";

const GO_FAR = "dosewright.command.go-far";

const keys: readonly (readonly [FarMove, number])[] = [
  ["pageUp", PAGE_UP],
  ["pageDown", PAGE_DOWN],
  ["rowEnd", END],
  ["rowStart", HOME],
  ["end", END | MetaKeys.CTRL_COMMAND],
  ["start", HOME | MetaKeys.CTRL_COMMAND],
];

export function takeFarKeys(grid: Grid): void {
  grid.injector.get(ICommandService).registerCommand({
    id: GO_FAR,
    type: CommandType.COMMAND,
    handler: (_, params?: object) => goFar(grid, params as Way<FarMove>),
  });
  leadBy(grid.injector, GO_FAR, keys, whenSheetEditorFocused);
}

function goFar(grid: Grid, { to: move, extend }: Way<FarMove>): boolean {
  const { injector, api } = grid;
  const commands = injector.get(ICommandService);
  const worksheet = workbookOf(grid)?.getActiveSheet();
  const selection = injector.get(SheetsSelectionsService).getCurrentLastSelection();
  const lines = linesOf(grid);
  if (!worksheet || !selection?.primary || !lines) return false;
  const { range, primary } = selection;
  const active = { row: primary.actualRow, column: primary.actualColumn };
  const from = extend ? farEnd(range, active) : active;
  const to = farFrom(from, move, lines);
  if (extend)
    commands.syncExecuteCommand(SetSelectionsOperation.id, {
      unitId: worksheet.getUnitId(),
      subUnitId: worksheet.getSheetId(),
      type: SelectionMoveType.MOVE_END,
      selections: [{ ...selection, range: { ...range, ...between(active, to) } }],
    });
  else api.getActiveWorkbook()?.getActiveSheet()?.getRange(to.row, to.column).activate();
  if (move === "pageDown" || move === "pageUp") {
    const start = (row: number) => lines.rowEnds[row - 1] ?? 0;
    const offsetY = start(to.row) - start(from.row);
    void commands.executeCommand(SetScrollRelativeCommand.id, { offsetY });
  }
  scrollToCell(grid, to.row, to.column);
  return true;
}

/** The corner of what is selected that is farthest from the active cell: it moves. */
function farEnd(range: IRange, { row, column }: Place): Place {
  return {
    row: range.endRow > row ? range.endRow : range.startRow,
    column: range.endColumn > column ? range.endColumn : range.startColumn,
  };
}

const between = (one: Place, other: Place) => ({
  startRow: Math.min(one.row, other.row),
  endRow: Math.max(one.row, other.row),
  startColumn: Math.min(one.column, other.column),
  endColumn: Math.max(one.column, other.column),
});

function linesOf({ injector }: Grid): SeenLines | undefined {
  const worksheet = workbookOf({ injector })?.getActiveSheet();
  const render = injector.get(IRenderManagerService).getRenderById(worksheet?.getUnitId() ?? "");
  const skeleton = render?.with(SheetSkeletonManagerService).getCurrentSkeleton();
  const view = render?.scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  if (!worksheet || !render || !skeleton || !view) return undefined;
  const { xSplit, ySplit } = worksheet.getFreeze();
  return {
    rowEnds: skeleton.rowHeightAccumulation,
    columnEnds: skeleton.columnWidthAccumulation,
    seen: (view.height ?? 0) / render.scene.scaleY,
    frozen: { row: ySplit, column: xSplit },
    lastFilled: () => lastFilledIn(worksheet, injector.get(FormulaDataModel)),
  };
}

function lastFilledIn(worksheet: Worksheet, model: FormulaDataModel): Map<number, number> {
  const last = new Map<number, number>();
  const fill = (row: number, column: number) => last.set(row, Math.max(column, last.get(row) ?? 0));
  worksheet.getCellMatrix().forValue((row, column, data) => {
    if (data?.f || data?.si || readValue(data) !== null) fill(row, column);
  });
  for (const { startRow, endRow, endColumn } of spilledRanges(model, worksheet))
    for (let row = startRow; row <= endRow; row++) fill(row, endColumn);
  return last;
}
