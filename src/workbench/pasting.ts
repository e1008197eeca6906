/** What the grid leaves out when cells are pasted: the rules for entries, and values without their formula. */
import { type ICellData, type ICommandInfo, ICommandService, type Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import {
  type ISetRangeValuesMutationParams,
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
} from "@univerjs/sheets";
import {
  type ISheetClipboardHook,
  ISheetClipboardService,
  PREDEFINED_HOOK_NAME_PASTE,
} from "@univerjs/sheets-ui";
import { addressOf } from "../workbook/address";
import type { Computed } from "./computed";
import { type CellPlace, patience, refusalOf, selectedPlace } from "./entry-check";
import { type Grid, workbookOf } from "./grid";
import { anchorOf, valueAt } from "./seen-cells";
import { patternAt } from "./shown-value";
import type { Said } from "./status";

type CellData = Record<number, Record<number, ICellData>>;
type PasteCells = NonNullable<ISheetClipboardHook["onPasteCells"]>;

/**
 * Other spreadsheets let everything be pasted. So does the grid; but whoever pastes is told where it breaks
 * a rule. What is written in the turn of the page in which a paste begins is pasted.
 */
export function checkPasted(grid: Grid, computed: Computed, told: (said: Said) => void): void {
  const commands = grid.injector.get(ICommandService);
  let pasted: CellPlace[] | undefined;
  commands.onCommandExecuted(({ id, params }: ICommandInfo, options) => {
    if (pasted && id === SetRangeValuesMutation.id && !options?.onlyLocal)
      pasted.push(...written(params as ISetRangeValuesMutationParams));
  });
  grid.injector.get(ISheetClipboardService).addClipboardHook({
    id: "dosewright.check-pasted",
    onBeforePaste: () => {
      const cells: CellPlace[] = [];
      pasted = cells;
      setTimeout(() => {
        pasted = undefined;
        void check(grid, computed, cells, told);
      }, 0);
      return true;
    },
  });
}

/** The cells that got a content, not just a look. */
const written = ({ subUnitId, cellValue }: ISetRangeValuesMutationParams): CellPlace[] =>
  Object.entries((cellValue ?? {}) as CellData).flatMap(([row, line]) =>
    Object.entries(line)
      .filter(([, cell]) => cell && ("v" in cell || "f" in cell))
      .map(([column]) => ({ sheetId: subUnitId, row: Number(row), column: Number(column) })),
  );

async function check(
  grid: Grid,
  computed: Computed,
  cells: readonly CellPlace[],
  told: (said: Said) => void,
): Promise<void> {
  const sheet = workbookOf(grid)?.getSheetBySheetId(cells[0]?.sheetId ?? "");
  if (!sheet) return;
  const hasFormula = cells.some(({ row, column }) => sheet.getCellRaw(row, column)?.f);
  if (hasFormula) await Promise.race([computed.next(), patience()]);
  let [count, first] = [0, ""];
  for (const place of cells) {
    const value = valueAt(grid, sheet, place.row, place.column);
    const sentence = await Promise.race([refusalOf(grid, place, value), patience()]);
    if (sentence === undefined) continue;
    if (count++ === 0) first = `${addressOf(place.row, place.column)}. ${sentence}`;
  }
  const place = selectedPlace(grid);
  if (count === 0 || !place) return;
  const many = `${count} pasted cells break the rules for their entries, the first is`;
  told({
    place,
    text: `${count === 1 ? "A pasted cell breaks the rule for its entries:" : many} ${first}`,
  });
}

/** Cells that a formula filled, copied without it, are pasted as values; with it, it fills the new ones. */
export function pasteSpilled(grid: Grid): void {
  const { injector } = grid;
  const onPasteCells: PasteCells = (from, to, cells, { copyType, pasteType }) => {
    const sheet = from && workbookOf(grid)?.getSheetBySheetId(from.subUnitId);
    const plain = pasteType === PREDEFINED_HOOK_NAME_PASTE.DEFAULT_PASTE && copyType === "COPY";
    const cellValue: CellData = {};
    if (sheet && plain)
      cells.forValue((row, column, cell) => {
        const [fromRow, toRow] = [
          from.range.rows[row % from.range.rows.length],
          to.range.rows[row],
        ];
        const fromColumn = from.range.cols[column % from.range.cols.length];
        const toColumn = to.range.cols[column];
        if (fromRow === undefined || fromColumn === undefined) return;
        if (toRow === undefined || toColumn === undefined) return;
        const anchor = anchorOf(grid, sheet, fromRow, fromColumn);
        if (from.range.rows.includes(anchor.row) && from.range.cols.includes(anchor.column)) return;
        cellValue[toRow] ??= {};
        cellValue[toRow][toColumn] = spilledInto(grid, sheet, fromRow, fromColumn, cell);
      });
    if (Object.keys(cellValue).length === 0) return { redos: [], undos: [] };
    const params = { unitId: to.unitId ?? "", subUnitId: to.subUnitId ?? "", cellValue };
    const { id } = SetRangeValuesMutation;
    const undo = SetRangeValuesUndoMutationFactory(injector, params);
    return { redos: [{ id, params }], undos: [{ id, params: undo }] };
  };
  // Behind what the grid pastes, for which these cells are blank.
  injector
    .get(ISheetClipboardService)
    .addClipboardHook({ id: "dosewright.paste-spilled", priority: 20, onPasteCells });
}

/** The value that lies in a cell without being its own, in the look that it has there. */
function spilledInto(grid: Grid, sheet: Worksheet, row: number, column: number, cell: ICellData) {
  const model = grid.injector.get(FormulaDataModel);
  const { v, t } =
    model.getArrayFormulaCellData()[sheet.getUnitId()]?.[sheet.getSheetId()]?.[row]?.[column] ?? {};
  const pattern = patternAt(grid, sheet, row, column);
  const look = typeof cell.s === "object" ? cell.s : {};
  return { v, t, f: null, si: null, p: null, ...(pattern && { s: { ...look, n: { pattern } } }) };
}
