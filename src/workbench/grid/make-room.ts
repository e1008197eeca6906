/**
 * Makes a sheet longer or wider before something lies beyond its edge. The grid's sheets begin smaller than
 * those of other spreadsheets, as whole columns take time by their length and the scroll bars go by it.
 */
import {
  type ICellData,
  ICommandService,
  type IRange,
  type IUnitRange,
  type Nullable,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import {
  type ISetRangeValuesMutationParams,
  type ISetSelectionsOperationParams,
  SetRangeValuesMutation,
  SetSelectionsOperation,
  SetWorksheetColumnCountMutation,
  SetWorksheetRowCountMutation,
} from "@univerjs/sheets";
import { fromGrid } from "../../engine/dialect";
import { answeredRanges } from "../../engine/read-cells";
import type { Book } from "../../workbook/book";
import { regionsOf } from "../../workbook/formula/regions";
import { sheetColumns, sheetRows } from "../../workbook/formula/shared";
import { type Grid, workbookOf } from "./grid";

/** Beyond what was asked for, so that a line more does not ask again. */
const SPARE_ROWS = 100;
const SPARE_COLUMNS = 10;

/** Whether the sheet had to grow, and could, to have so many rows and columns. */
function grow(grid: Grid, worksheet: Worksheet, rows: number, columns: number): boolean {
  const commands = grid.injector.get(ICommandService);
  const place = { unitId: worksheet.getUnitId(), subUnitId: worksheet.getSheetId() };
  const longer = rows > worksheet.getRowCount() && rows <= sheetRows;
  const wider = columns > worksheet.getColumnCount() && columns <= sheetColumns;
  if (longer) {
    const rowCount = Math.min(rows + SPARE_ROWS, sheetRows);
    commands.syncExecuteCommand(SetWorksheetRowCountMutation.id, { ...place, rowCount });
  }
  if (wider) {
    const columnCount = Math.min(columns + SPARE_COLUMNS, sheetColumns);
    commands.syncExecuteCommand(SetWorksheetColumnCountMutation.id, { ...place, columnCount });
  }
  return longer || wider;
}

/** For cells that are typed into formulas, and for those that are gone to. */
export function makeRoom(grid: Grid): void {
  grid.injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    const workbook = workbookOf(grid);
    if (!workbook) return;
    if (id === SetRangeValuesMutation.id)
      forFormulas(grid, workbook, params as ISetRangeValuesMutationParams);
    if (id === SetSelectionsOperation.id) {
      const { subUnitId, selections } = params as ISetSelectionsOperationParams;
      const worksheet = workbook.getSheetBySheetId(subUnitId);
      for (const { range } of worksheet ? selections : [])
        grow(grid, worksheet as Worksheet, range.endRow + 1, range.endColumn + 1);
    }
  });
}

function forFormulas(
  grid: Grid,
  workbook: Workbook,
  { subUnitId, cellValue }: ISetRangeValuesMutationParams,
): void {
  const home = workbook.getSheetBySheetId(subUnitId)?.getName();
  if (home === undefined) return;
  const sheets = workbook.getSheets().map((one) => ({ name: one.getName(), cells: {} }));
  const names: Book = { sheets, definedNames: [], tables: [], styles: {} };
  for (const line of Object.values(cellValue ?? {}))
    for (const cell of Object.values<Nullable<ICellData>>(line ?? {})) {
      if (!cell?.f) continue;
      for (const { sheet, area } of regionsOf(fromGrid(cell.f), home, names)) {
        const worksheet = workbook.getSheetBySheetName(sheet);
        const lastRow = area.rows < sheetRows ? area.row + area.rows : 0;
        const lastColumn = area.columns < sheetColumns ? area.column + area.columns : 0;
        if (worksheet) grow(grid, worksheet, lastRow, lastColumn);
      }
    }
}

/** For answers that would end beyond the edge. */
export class AnswerRoom {
  /** Formulas that were given room and have not been seen to fit: their answers grow with the sheet. */
  #given = new Set<string>();

  constructor(private readonly grid: Grid) {}

  /** The cells of the formulas that have room now and had none. */
  make(workbook: Workbook): IUnitRange[] {
    const model = this.grid.injector.get(FormulaDataModel);
    const given = new Set<string>();
    const roomier = workbook.getSheets().flatMap((worksheet) =>
      answeredRanges(model, worksheet).flatMap((range): IUnitRange[] => {
        if (!isBeyond(range, worksheet)) return [];
        const { startRow, startColumn, endRow, endColumn } = range;
        const [unitId, sheetId] = [worksheet.getUnitId(), worksheet.getSheetId()];
        const key = `${unitId} ${sheetId} ${startRow} ${startColumn}`;
        given.add(key);
        if (this.#given.has(key) || !grow(this.grid, worksheet, endRow + 1, endColumn + 1))
          return [];
        const cell = { startRow, startColumn, endRow: startRow, endColumn: startColumn };
        return [{ unitId, sheetId, range: cell }];
      }),
    );
    this.#given = given;
    return roomier;
  }
}

const isBeyond = ({ endRow, endColumn }: IRange, worksheet: Worksheet) =>
  endRow >= worksheet.getRowCount() || endColumn >= worksheet.getColumnCount();
