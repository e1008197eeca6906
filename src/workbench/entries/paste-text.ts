/**
 * Text that comes from elsewhere without a look of its own takes the look of the cells that it is pasted into,
 * as in every spreadsheet: the grid would make the cells plain.
 */
import {
  getNumfmtParseValueFilter,
  type ICellData,
  type IMutationInfo,
  ObjectMatrix,
} from "@univerjs/core";
import { SetRangeValuesMutation, SetRangeValuesUndoMutationFactory } from "@univerjs/sheets";
import {
  type ISheetClipboardHook,
  ISheetClipboardService,
  PREDEFINED_HOOK_NAME_PASTE,
} from "@univerjs/sheets-ui";
import { type Grid, workbookOf } from "../grid/grid";
import { intoAllSelected } from "./paste-one-text";

const { DEFAULT_PASTE, SPECIAL_PASTE_VALUE } = PREDEFINED_HOOK_NAME_PASTE;

type Paste = NonNullable<ISheetClipboardHook["onPasteCells"]>;

/** The grid's clipboard is there with its first workbook, its ways to paste once that is drawn. */
export function keepLookUnderText(grid: Grid): void {
  const clipboard = grid.injector.get(ISheetClipboardService);
  const add = clipboard.addClipboardHook.bind(clipboard);
  clipboard.addClipboardHook = (way) => {
    const pasteAll = way.onPasteCells;
    if (way.id !== DEFAULT_PASTE || !pasteAll) return add(way);
    const onPasteCells: Paste = (from, to, cells, payload) => {
      const values = clipboard.getClipboardHooks().find(({ id }) => id === SPECIAL_PASTE_VALUE);
      let hasLook = from !== null;
      cells.forValue((_row, _column, { s }) => {
        hasLook ||= Object.keys(s ?? {}).length > 0;
      });
      if (hasLook || !values?.onPasteCells) return pasteAll(from, to, cells, payload);
      const { undos, redos } = values.onPasteCells(from, to, cells, payload);
      const formats = formatsOfText(grid, to, cells);
      return { undos: [...undos, ...formats.undos], redos: [...redos, ...formats.redos] };
    };
    const { onPastePlainText } = way;
    return add({
      ...way,
      onPasteCells,
      ...(onPastePlainText && { onPastePlainText: intoAllSelected(grid, onPastePlainText) }),
    });
  };
}

/** A date or a percentage gives its form to a cell that has none. */
function formatsOfText(
  grid: Grid,
  { unitId, subUnitId, range }: Parameters<Paste>[1],
  cells: Parameters<Paste>[2],
) {
  const worksheet = workbookOf(grid)?.getSheetBySheetId(subUnitId);
  const formats = new ObjectMatrix<ICellData>();
  cells.forValue((down, across, { v }) => {
    const pattern = getNumfmtParseValueFilter(String(v ?? "").trim())?.z;
    const [row, column] = [range.rows[down], range.cols[across]];
    if (!pattern || row === undefined || column === undefined) return;
    if (!worksheet?.getCellStyle(row, column)?.n)
      formats.setValue(row, column, { s: { n: { pattern } } });
  });
  const params = { unitId, subUnitId, cellValue: formats.getMatrix() };
  const mutation = (given: object): IMutationInfo[] => [
    { id: SetRangeValuesMutation.id, params: given },
  ];
  return {
    redos: mutation(params),
    undos: mutation(SetRangeValuesUndoMutationFactory(grid.injector, params)),
  };
}
