/**
 * Other spreadsheets let everything be pasted, filled into cells or dragged onto them. So does the grid; but
 * whoever does it is told where that breaks a rule for entries.
 */
import { type ICommandInfo, ICommandService, Range } from "@univerjs/core";
import {
  AUTO_FILL_APPLY_TYPE,
  AUTO_FILL_HOOK_TYPE,
  IAutoFillService,
  type IMoveRangeCommandParams,
  type IMoveRangeMutationParams,
  type ISetRangeValuesMutationParams,
  MoveRangeCommand,
  MoveRangeMutation,
  SetRangeValuesMutation,
} from "@univerjs/sheets";
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { CellPlace } from "../../engine/cell-place";
import { addressOf } from "../../workbook/address";
import type { Computed } from "../grid/computed";
import { type Grid, workbookOf } from "../grid/grid";
import type { CellData } from "../grid/one-step";
import { valueAt } from "../grid/seen-cells";
import type { Said } from "../status/status";
import { patience, refusalOf, ruleAt, selectedPlace } from "./entry-check";

type Way = "pasted" | "filled" | "moved";

export function tellBreaches(grid: Grid, computed: Computed, tell: (said: Said) => void): void {
  const check = async (cells: readonly CellPlace[], way: Way) => {
    const text = await breachesOf(grid, computed, cells, way);
    const place = selectedPlace(grid);
    if (text !== undefined && place) tell({ place, text });
  };
  watchPasting(grid, (cells) => void check(cells, "pasted"));
  watchFilling(grid, (cells) => void check(cells, "filled"));
  watchMoving(grid, (cells) => void check(cells, "moved"));
}

/** What is written in the turn of the page in which a paste begins is pasted. */
function watchPasting({ injector }: Grid, done: (cells: readonly CellPlace[]) => void): void {
  let pasted: CellPlace[] | undefined;
  injector.get(ICommandService).onCommandExecuted(({ id, params }: ICommandInfo, options) => {
    if (!pasted || options?.onlyLocal) return;
    if (id === SetRangeValuesMutation.id)
      pasted.push(...written(params as ISetRangeValuesMutationParams));
    // What was cut.
    if (id === MoveRangeMutation.id) {
      const { subUnitId, value } = (params as IMoveRangeMutationParams).to;
      pasted.push(...written({ subUnitId, cellValue: value }));
    }
  });
  injector.get(ISheetClipboardService).addClipboardHook({
    id: "dosewright.check-pasted",
    onBeforePaste: () => {
      const cells: CellPlace[] = [];
      pasted = cells;
      setTimeout(() => {
        pasted = undefined;
        done(cells);
      }, 0);
      return true;
    },
  });
}

/** The cells that got a content, not just a look. */
const written = ({
  subUnitId,
  cellValue,
}: Pick<ISetRangeValuesMutationParams, "subUnitId" | "cellValue">): CellPlace[] =>
  Object.entries((cellValue ?? {}) as CellData).flatMap(([row, line]) =>
    Object.entries(line)
      .filter(([, cell]) => cell && ("v" in cell || "f" in cell))
      .map(([column]) => ({ sheetId: subUnitId, row: Number(row), column: Number(column) })),
  );

/** By the handle, by keys, or in another way than at first. */
function watchFilling({ injector }: Grid, done: (cells: readonly CellPlace[]) => void): void {
  injector.get(IAutoFillService).addHook({
    id: "dosewright.check-filled",
    type: AUTO_FILL_HOOK_TYPE.APPEND,
    onAfterFillData: ({ target: { rows, cols }, subUnitId: sheetId }, _, way) => {
      if (way !== AUTO_FILL_APPLY_TYPE.ONLY_FORMAT)
        done(rows.flatMap((row) => cols.map((column) => ({ sheetId, row, column }))));
    },
  });
}

/** By the edge of what is selected. */
function watchMoving(grid: Grid, done: (cells: readonly CellPlace[]) => void): void {
  grid.injector.get(ICommandService).onCommandExecuted(({ id, params }: ICommandInfo) => {
    const sheetId = workbookOf(grid)?.getActiveSheet()?.getSheetId();
    if (id !== MoveRangeCommand.id || sheetId === undefined) return;
    const { toRange } = params as IMoveRangeCommandParams;
    const cells: CellPlace[] = [];
    Range.foreach(toRange, (row, column) => cells.push({ sheetId, row, column }));
    done(cells);
  });
}

async function breachesOf(
  grid: Grid,
  computed: Computed,
  cells: readonly CellPlace[],
  way: Way,
): Promise<string | undefined> {
  const sheet = workbookOf(grid)?.getSheetBySheetId(cells[0]?.sheetId ?? "");
  const ruled = cells.filter((place) => ruleAt(grid, place));
  if (!sheet || ruled.length === 0) return undefined;
  const isFormula = ({ row, column }: CellPlace) => {
    const data = sheet.getCellRaw(row, column);
    return data?.f || data?.si;
  };
  if (cells.some(isFormula)) await Promise.race([computed.next(), patience()]);
  let [count, first] = [0, ""];
  for (const place of ruled) {
    const value = valueAt(grid, sheet, place.row, place.column);
    const sentence = await Promise.race([refusalOf(grid, place, value), patience()]);
    if (sentence === undefined) continue;
    if (count++ === 0) first = `${addressOf(place.row, place.column)}. ${sentence}`;
  }
  if (count === 0) return undefined;
  if (count === 1) return `A ${way} cell breaks the rule for its entries: ${first}`;
  return `${count} ${way} cells break the rules for their entries, the first is ${first}`;
}
