/**
 * A table takes in what is typed or pasted right below it: its new rows get the look, the rules and the
 * formulas of the last one, and every formula that names the table reads them, too. A step of its own to undo.
 */
import {
  type ICellData,
  ICommandService,
  type Nullable,
  RedoCommand,
  UndoCommand,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from "@univerjs/sheets";
import { spellingOut } from "../../engine/spelled-out";
import { putCell, type Table } from "../../workbook/book";
import type { Carried } from "../book/grid-book";
import { readAnew } from "../formulas/read-anew";
import { allTables, vocabularyOf } from "../formulas/typed-formulas";
import { type Grid, workbookOf } from "../grid/grid";
import { type CellData, writeAsOneStep } from "../grid/one-step";
import { gridFormulaAt, valueAt } from "../grid/seen-cells";
import { growRules } from "./grow-rules";

export function growTables(grid: Grid): void {
  const commands = grid.injector.get(ICommandService);
  // Undone and done again, a table has its own steps.
  let goingBack = 0;
  const isWayBack = (id: string) => id === UndoCommand.id || id === RedoCommand.id;
  commands.onCommandExecuted(({ id }) => {
    if (isWayBack(id)) goingBack--;
  });
  commands.beforeCommandExecuted(({ id, params }, options) => {
    if (isWayBack(id)) goingBack++;
    if (id !== SetRangeValuesMutation.id || options?.onlyLocal || goingBack > 0) return;
    const typed = params as ISetRangeValuesMutationParams;
    const workbook = workbookOf(grid);
    const worksheet = workbook?.getSheetBySheetId(typed.subUnitId);
    if (!workbook || !worksheet) return;
    // What was typed becomes a step to undo first.
    for (const { table, rows } of growths(grid, worksheet, (typed.cellValue ?? {}) as CellData))
      queueMicrotask(() => workbookOf(grid) === workbook && grow(grid, workbook, table, rows));
  });
}

const holds = (cell: Nullable<ICellData>) =>
  Boolean(cell?.f || cell?.si) || (cell?.v !== undefined && cell.v !== null && cell.v !== "");

/** The tables below whose last row something comes to stand in blank cells, and how many rows of it. */
function growths(grid: Grid, worksheet: Worksheet, typed: CellData) {
  const filled = Object.keys(typed).map(Number);
  const ends = filled.flatMap((row) =>
    Object.values(worksheet.getCellMatrix().getRow(row - 1) ?? {}).flatMap((cell) => {
      const { tableEnd } = (cell?.custom ?? {}) as Carried;
      return tableEnd && !tableEnd.totalsRow ? [tableEnd.name] : [];
    }),
  );
  if (ends.length === 0) return [];
  return allTables(grid).flatMap((table) => {
    if (table.sheet !== worksheet.getName() || !ends.includes(table.name)) return [];
    const columns = Array.from({ length: table.area.columns }, (_, at) => table.area.column + at);
    const below = table.area.row + table.area.rows;
    let rows = 0;
    while (columns.some((column) => holds(typed[below + rows]?.[column]))) {
      const blank = columns.every((column) => isBlank(grid, worksheet, below + rows, column));
      if (!blank) break;
      rows++;
    }
    return rows > 0 ? [{ table, rows }] : [];
  });
}

const isBlank = (grid: Grid, worksheet: Worksheet, row: number, column: number) =>
  !worksheet.getCellRaw(row, column)?.f && valueAt(grid, worksheet, row, column) === null;

function grow(grid: Grid, workbook: Workbook, table: Table, rows: number): void {
  const grown = { ...table, area: { ...table.area, rows: table.area.rows + rows } };
  const words = vocabularyOf(grid);
  const tables = words.tables.map((one) => (one.name === table.name ? grown : one));
  const before = spellingOut(words);
  const after = spellingOut({ ...words, tables });
  const written = workbook.getSheets().flatMap((worksheet) => {
    const cells: CellData = {};
    if (worksheet.getName() === table.sheet) fillDown(grid, worksheet, table, rows, cells);
    readAnew(grid, worksheet, { before, after, isNew: false }, cells);
    return Object.keys(cells).length > 0 ? [[worksheet.getSheetId(), cells] as const] : [];
  });
  const own = workbook.getSheets().find((worksheet) => worksheet.getName() === table.sheet);
  const steps = own ? growRules(grid, own, table, rows) : [];
  writeAsOneStep(grid, workbook, new Map(written), { steps });
}

/** A cell that is written without its formula, if only to mark it, is no longer computed. */
const formulaOf = (cell: Nullable<ICellData>): ICellData => ({
  ...(cell?.f ? { f: cell.f } : {}),
  ...(cell?.si ? { si: cell.si } : {}),
});

/** The new rows, after the pattern of the last one; its mark of the end goes to the new end. */
function fillDown(
  grid: Grid,
  worksheet: Worksheet,
  { area }: Table,
  rows: number,
  cells: CellData,
): void {
  const lexer = grid.injector.get(LexerTreeBuilder);
  const last = area.row + area.rows - 1;
  for (let column = area.column; column < area.column + area.columns; column++) {
    const pattern = worksheet.getCellRaw(last, column) ?? {};
    const { tableEnd, ...kept } = (pattern.custom ?? {}) as Carried;
    if (tableEnd) putCell(cells, last, column, { ...formulaOf(pattern), custom: kept });
    const repeated = gridFormulaAt(grid, worksheet, last, column);
    for (let down = 1; down <= rows; down++) {
      const own = worksheet.getCellRaw(last + down, column);
      const fills = repeated && !holds(own);
      const { formula, tableStart: _start, ...carried } = kept;
      const custom = { ...carried, ...(fills && formula !== undefined && { formula }) };
      putCell(cells, last + down, column, {
        ...(pattern.s ? { s: pattern.s } : {}),
        ...(fills ? { f: lexer.moveFormulaRefOffset(repeated, 0, down) } : formulaOf(own)),
        custom: { ...own?.custom, ...custom, ...(tableEnd && down === rows && { tableEnd }) },
      });
    }
  }
}
