/**
 * What the grid does with rows under a filter of its own accord is right for the most part: it pastes, fills and
 * clears the rows that show. Here is the rest: what would end without a word, and what would reach hidden rows.
 */
import { ICommandService, type IRange } from "@univerjs/core";
import {
  AutoClearContentCommand,
  AutoFillCommand,
  ClearSelectionAllCommand,
  ClearSelectionContentCommand,
  ClearSelectionFormatCommand,
  type IAutoClearContentCommand,
  IAutoFillService,
  type IMoveRangeCommandParams,
  MoveRangeCommand,
  SetSelectionsOperation,
  SheetCopyDownCommand,
  SheetCopyRightCommand,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import {
  ISheetClipboardService,
  SheetCopyCommand,
  SheetCutCommand,
  SheetPasteCommand,
  SheetPasteShortKeyCommand,
} from "@univerjs/sheets-ui";
import { isEditing } from "../grid/editing";
import { type Grid, workbookOf } from "../grid/grid";
import { fillOf, holdsHidden, NONE_SHOWN, NOT_CUT, NOT_MOVED, rowsShown } from "./within-shown";

/** Undefined lets the grid go on. */
type Instead = (params: object) => Promise<boolean> | undefined;

/** Commands that work on the selected cells. */
const onSelected = new Set<string>(
  [
    ClearSelectionAllCommand,
    ClearSelectionContentCommand,
    ClearSelectionFormatCommand,
    SheetCopyCommand,
    SheetCopyDownCommand,
    SheetCopyRightCommand,
    SheetCutCommand,
    SheetPasteCommand,
    SheetPasteShortKeyCommand,
  ].map(({ id }) => id),
);

export function keepToShown(grid: Grid, tell: (sentence: string) => void): void {
  const { injector } = grid;
  const commands = injector.get(ICommandService);
  const execute = commands.executeCommand.bind(commands);
  const sheet = () => workbookOf(grid)?.getActiveSheet();
  const isHidden = (row: number) => sheet()?.getRowFiltered(row) ?? false;
  const refuse = async (sentence: string) => {
    tell(sentence);
    return false;
  };
  const place = () => ({
    unitId: sheet()?.getUnitId() ?? "",
    subUnitId: sheet()?.getSheetId() ?? "",
  });
  const selections = injector.get(SheetsSelectionsService);
  const last = () => selections.getCurrentLastSelection();
  const isNoneShown = () => {
    const ranges = selections.getCurrentSelections().map(({ range }) => range);
    return ranges.length > 0 && ranges.every((range) => rowsShown(range, isHidden).length === 0);
  };

  const instead: Readonly<Record<string, Instead>> = {
    [SheetCutCommand.id]: () => {
      const range = last()?.range;
      return range && holdsHidden(range, isHidden) ? refuse(NOT_CUT) : undefined;
    },
    [MoveRangeCommand.id]: (params) => {
      const { fromRange, toRange } = params as IMoveRangeCommandParams;
      const meetsHidden = [fromRange, toRange].some((range) => holdsHidden(range, isHidden));
      return meetsHidden ? refuse(NOT_MOVED) : undefined;
    },
    [SheetCopyDownCommand.id]: () => {
      const range = last()?.range;
      const fill = range && fillOf(range, isHidden);
      return fill && holdsHidden(fill.targetRange, isHidden) ? copyDown(fill) : undefined;
    },
    [AutoClearContentCommand.id]: (params) => {
      const { clearRange, selectionRange } = params as IAutoClearContentCommand;
      return holdsHidden(clearRange, isHidden) ? clear(clearRange, selectionRange) : undefined;
    },
  };

  const copyDown = async (fill: { sourceRange: IRange; targetRange: IRange }) => {
    const isDone = await execute(AutoFillCommand.id, { ...place(), ...fill, applyType: "COPY" });
    injector.get(IAutoFillService).setShowMenu(false);
    return Boolean(isDone);
  };
  const clear = async (range: IRange, left: IRange) => {
    const selection = last();
    const isDone = await execute(ClearSelectionContentCommand.id, { ...place(), ranges: [range] });
    const kept = { ...selection, range: left };
    await execute(SetSelectionsOperation.id, { ...place(), selections: [kept] });
    return Boolean(isDone);
  };

  const answerTo = (id: string, params: object = {}): Promise<boolean> | undefined => {
    if (isEditing(grid)) return undefined;
    if (onSelected.has(id) && isNoneShown()) return refuse(NONE_SHOWN);
    return instead[id]?.(params);
  };
  commands.executeCommand = ((id, params, options) =>
    answerTo(id, params) ?? execute(id, params, options)) as typeof execute;

  // Of rows to paste onto, the grid leaves out those under a filter, but for cells that were cut.
  injector.get(ISheetClipboardService).addClipboardHook({
    id: "dosewright.keep-to-shown",
    onBeforePaste: ({ range }) => {
      const isCutOnHidden = range.rows.some(isHidden);
      if (isCutOnHidden) tell(NOT_MOVED);
      return !isCutOnHidden;
    },
  });
}
