/**
 * Rows that are put into a table are rows of it: they compute what its columns repeat, right below its heads they
 * look as the row after them, and all that reads the whole table reads them, too. Undone with the rows.
 */
import {
  ICommandService,
  type IRange,
  type IUndoRedoItem,
  IUndoRedoService,
  type Nullable,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import {
  type IInsertRowCommandParams,
  InsertRowByRangeCommand,
  InsertRowMutation,
} from "@univerjs/sheets";
import { spellingOut } from "../../engine/spelled-out";
import { type Area, putCell, type Table } from "../../workbook/book";
import { bodyOf } from "../../workbook/layout/filled-in";
import { type Change, changeBy, type TakenIn } from "../following/changes";
import type { Followed } from "../following/followed";
import { type FollowedInGrid, followInGrid, type RuleInGrid } from "../following/grid-formulas";
import { asWritten, type Written, writeAnew } from "../formulas/read-anew";
import { vocabularyOf } from "../formulas/typed-formulas";
import { type Grid, workbookOf } from "../grid/grid";
import { type CellData, type Step, writeAsOneStep } from "../grid/one-step";
import { gridFormulaAt } from "../grid/seen-cells";
import { besideRows, moveUp } from "./beside-table";
import { cellAsIn, columnFormulas, writtenAsIn } from "./column-formulas";
import { growRules } from "./grow-rules";
import { type Repeated, repeats } from "./repeated-formula";

/** What was there before the rows were. */
interface Before {
  readonly workbook: Workbook;
  readonly worksheet: Worksheet;
  readonly range: IRange;
  readonly tables: readonly Table[];
  readonly repeated: ReadonlyMap<number, Repeated>;
  /** Filled by formulas beside them. */
  readonly beside: readonly Area[];
  /** By sheet, where the rows come to an edge: the grid leads past them what reads the rows that were there. */
  readonly written: ReadonlyMap<Worksheet, readonly FollowedInGrid[]>;
  readonly step: Nullable<IUndoRedoItem>;
}

export function fillInsertedRows(grid: Grid): void {
  const commands = grid.injector.get(ICommandService);
  const lastStep = () => grid.injector.get(IUndoRedoService).pitchTopUndoElement();
  let before: Before | undefined;
  commands.beforeCommandExecuted(({ id, params }) => {
    if (id === InsertRowByRangeCommand.id)
      before = prepare(grid, params as IInsertRowCommandParams, lastStep());
  });
  commands.onCommandExecuted(({ id }) => {
    if (id !== InsertRowByRangeCommand.id || !before) return;
    const step = lastStep();
    if (step && step !== before.step) fill(grid, before, step);
    before = undefined;
  });
}

function prepare(
  grid: Grid,
  params: IInsertRowCommandParams,
  step: Before["step"],
): Before | undefined {
  const workbook = workbookOf(grid);
  const worksheet = workbook?.getSheetBySheetId(params.subUnitId);
  if (!workbook || !worksheet) return undefined;
  const at = params.range.startRow;
  const words = vocabularyOf(grid);
  const tables = words.tables.filter(
    ({ sheet, area }) =>
      sheet === worksheet.getName() && at > area.row && at < area.row + area.rows,
  );
  if (tables.length === 0) return undefined;
  const first = tables.filter((table) => bodyOf(table).row === at);
  const beside = first.flatMap((table) => besideRows(grid, worksheet, table));
  const bodies = [...tables.map(bodyOf), ...beside];
  Object.assign(params.range, { bodies } satisfies TakenIn);
  for (const { column, columns } of [...first.map(bodyOf), ...beside])
    lookAsRowAfter(params, worksheet, column, columns);
  const before = spellingOut(words);
  const sheets = tables.some((table) => isEdge(table, at)) ? workbook.getSheets() : [];
  const follow = (sheet: Worksheet) =>
    asWritten(grid, sheet, before).map(({ row, column, written }) => {
      const cell = { row, column, rows: 1, columns: 1 };
      return followInGrid(workbook, sheet.getSheetId(), [cell], [`=${written}`]);
    });
  return {
    workbook,
    worksheet,
    range: params.range,
    tables,
    beside,
    repeated: new Map(tables.flatMap((table) => [...columnFormulas(grid, worksheet, table, at)])),
    written: new Map(sheets.map((sheet) => [sheet, follow(sheet)])),
    step,
  };
}

/** Above the first row of the body, or below its last one and above the totals. */
function isEdge(table: Table, at: number): boolean {
  const { row, rows } = bodyOf(table);
  return at === row || at === row + rows;
}

/** Else they would look as the heads before them. */
function lookAsRowAfter(
  params: IInsertRowCommandParams,
  worksheet: Worksheet,
  first: number,
  columns: number,
): void {
  const { startRow, endRow } = params.range;
  const cells = (params.cellValue ?? {}) as CellData;
  params.cellValue = cells;
  for (let column = first; column < first + columns; column++) {
    const look = worksheet.getCellRaw(startRow, column)?.s ?? null;
    for (let row = startRow; row <= endRow; row++) putCell(cells, row, column, { s: look });
  }
}

function fill(grid: Grid, before: Before, step: IUndoRedoItem): void {
  const { workbook, worksheet, range, tables, repeated } = before;
  const { startRow: at, endRow } = range;
  const count = endRow - at + 1;
  const now = (row: number) => (row < at ? row : row + count);
  const rows = Array.from({ length: count }, (_, index) => at + index);
  const own: CellData = {};
  const changes = [
    changeBy(InsertRowMutation.id, { subUnitId: worksheet.getSheetId(), range }) as Change,
    ...before.beside.map((filled) => {
      const look = worksheet.getCellRaw(now(filled.row), filled.column)?.s;
      if (look) putCell(own, now(filled.row), filled.column, { s: look });
      return moveUp(grid, worksheet, { ...filled, row: now(filled.row) }, count, step);
    }),
  ];
  const change: Change = (followed) =>
    changes.reduce<readonly Followed[]>((parts, by) => parts.flatMap(by), [followed]);
  for (const [column, { source, rows: same }] of repeated) {
    const cell = (row: number) => cellAsIn(grid, worksheet, column, now(source), row);
    const formula = (row: number) => gridFormulaAt(grid, worksheet, row, column)?.slice(1) ?? "";
    for (const row of rows) putCell(own, row, column, cell(row));
    // What reads the row before it or after it was led past those that are new.
    const says = repeats(formula(now(source)));
    for (const row of same.map(now))
      if (!says(formula(row), row - now(source)))
        putCell(own, row, column, { f: cell(row).f ?? null, si: null });
  }
  const after = spellingOut(vocabularyOf(grid));
  const cells = new Map([[worksheet.getSheetId(), own]]);
  for (const [sheet, followed] of before.written) {
    const written = followed.flatMap((one) => one.after(change).flatMap(writtenNow));
    if (sheet === worksheet)
      for (const [column, { source }] of repeated)
        written.push(...writtenAsIn(written, column, now(source), rows));
    const its = sheet === worksheet ? own : {};
    writeAnew(grid, sheet, written, after, its);
    if (Object.keys(its).length > 0) cells.set(sheet.getSheetId(), its);
  }
  const steps = tables.flatMap((table) => stretchRules(grid, worksheet, table, at, count));
  writeAsOneStep(grid, workbook, cells, { steps, with: step });
}

function writtenNow({ areas: [cell], formulas: [formula] }: RuleInGrid): Written[] {
  if (!cell || formula === undefined) return [];
  return [{ row: cell.row, column: cell.column, written: formula.slice(1) }];
}

function stretchRules(
  grid: Grid,
  worksheet: Worksheet,
  table: Table,
  at: number,
  count: number,
): Step[] {
  if (!isEdge(table, at)) return [];
  const body = bodyOf(table);
  const grown = { ...body, rows: body.rows + count };
  const left = at === body.row ? { ...body, row: body.row + count } : body;
  return growRules(grid, worksheet, left, grown);
}
