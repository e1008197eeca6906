/**
 * Brings a cell into view. The grid counts the columns that it scrolls by from the first one, also where
 * some are frozen: with columns of different widths the cell comes to lie half behind those.
 */
import { ICommandService } from "@univerjs/core";
import { IRenderManagerService, SHEET_VIEWPORT_KEY } from "@univerjs/engine-render";
import {
  ScrollCommand,
  SheetSkeletonManagerService,
  SheetsScrollRenderController,
} from "@univerjs/sheets-ui";
import { type Grid, workbookOf } from "../grid/grid";

/** A row of columns, or a column of rows. */
export interface Line {
  /** Where each of them ends. */
  readonly ends: readonly number[];
  readonly frozen: number;
  /** How far it is scrolled, and how much of it is seen beside what is frozen. */
  readonly scrolled: number;
  readonly seen: number;
}

/** How far to scroll so that one of them is seen, or comes first. What is frozen is always seen. */
export function scrolledTo({ ends, frozen, scrolled, seen }: Line, index: number, first = false) {
  const startOf = (one: number) => ends[one - 1] ?? 0;
  if (index < frozen) return first ? 0 : scrolled;
  const [start, end] = [startOf(index) - startOf(frozen), (ends[index] ?? 0) - startOf(frozen)];
  if (first || start < scrolled) return start;
  if (end <= scrolled + seen) return scrolled;
  // At the far end, and the one at the near end whole.
  let near = frozen;
  while (near < index && end - (startOf(near) - startOf(frozen)) > seen) near++;
  return startOf(near) - startOf(frozen);
}

/** Where the grid's scroll bars lie over its cells. */
const SCROLL_BAR = 12;

export function scrollToCell({ injector }: Grid, row: number, column: number, first = false) {
  const workbook = workbookOf({ injector });
  const render = injector.get(IRenderManagerService).getRenderById(workbook?.getUnitId() ?? "");
  const skeleton = render?.with(SheetSkeletonManagerService).getCurrentSkeleton();
  const view = render?.scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  const freeze = workbook?.getActiveSheet()?.getFreeze();
  if (!render || !skeleton || !view || !freeze) return false;
  const { scaleX, scaleY } = render.scene;
  const x = scrolledTo(
    {
      ends: skeleton.columnWidthAccumulation,
      frozen: freeze.xSplit,
      scrolled: view.viewportScrollX,
      seen: ((view.width ?? 0) - SCROLL_BAR) / scaleX,
    },
    column,
    first,
  );
  const y = scrolledTo(
    {
      ends: skeleton.rowHeightAccumulation,
      frozen: freeze.ySplit,
      scrolled: view.viewportScrollY,
      seen: ((view.height ?? 0) - SCROLL_BAR) / scaleY,
    },
    row,
    first,
  );
  if (x === view.viewportScrollX && y === view.viewportScrollY) return false;
  const at = skeleton.getOffsetRelativeToRowCol(x, y);
  return injector.get(ICommandService).syncExecuteCommand(ScrollCommand.id, {
    sheetViewStartRow: at.row,
    sheetViewStartColumn: at.column,
    offsetX: at.columnOffset,
    offsetY: at.rowOffset,
  });
}

/** Whatever in the grid brings a cell into view does it so. */
export function scrollPastFrozen(grid: Grid): void {
  Object.assign(SheetsScrollRenderController.prototype, {
    scrollToCell: (row: number, column: number) => scrollToCell(grid, row, column, true),
    _scrollToCell: (row: number, column: number, top = false, left = false) =>
      scrollToCell(grid, row, column, top || left),
  });
}
