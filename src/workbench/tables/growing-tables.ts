/**
 * A table takes in what is typed or pasted right below it: its new rows get the look and the rules of the
 * last one and the formulas that its columns repeat, and every formula that names the table reads them, too. A step of its own to undo.
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
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from "@univerjs/sheets";
import { fromGrid } from "../../engine/dialect";
import { spellingOut } from "../../engine/spelled-out";
import { withTableNames } from "../../engine/structured";
import { putCell, type Table } from "../../workbook/book";
import { bodyOf } from "../../workbook/layout/filled-in";
import type { Carried } from "../book/grid-book";
import { asWritten, type Written, writeAnew } from "../formulas/read-anew";
import { vocabularyOf } from "../formulas/typed-formulas";
import { type Grid, workbookOf } from "../grid/grid";
import { type CellData, writeAsOneStep } from "../grid/one-step";
import { gridFormulaAt } from "../grid/seen-cells";
import { cellAsIn, columnFormulas, columnsOf, writtenAsIn } from "./column-formulas";
import { growRules } from "./grow-rules";
import { growths, holds, withRows } from "./growths";
import { placed, Tables } from "./tables";

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
    for (const { table, rows } of growths(
      grid,
      workbook,
      worksheet,
      (typed.cellValue ?? {}) as CellData,
    ))
      queueMicrotask(() => workbookOf(grid) === workbook && grow(grid, workbook, table, rows));
  });
}

function grow(grid: Grid, workbook: Workbook, table: Table, rows: number): void {
  const words = vocabularyOf(grid);
  const wordsAfter = withRows(words, table, table.area.rows + rows);
  const [before, after] = [spellingOut(words), spellingOut(wordsAfter)];
  const named = (one: Written): Written => {
    const place = { ...one, sheet: table.sheet };
    return { ...one, written: withTableNames(one.written, wordsAfter.tables, place) };
  };
  const written = workbook.getSheets().flatMap((worksheet) => {
    const cells: CellData = {};
    const known = asWritten(grid, worksheet, before);
    const formulas =
      worksheet.getName() === table.sheet
        ? [...known, ...fillDown(grid, worksheet, table, rows, known, cells)].map(named)
        : known;
    writeAnew(grid, worksheet, formulas, after, cells);
    return Object.keys(cells).length > 0 ? [[worksheet.getSheetId(), cells] as const] : [];
  });
  const own = workbook.getSheets().find((worksheet) => worksheet.getName() === table.sheet);
  if (!own) return;
  const grown = { ...table, area: { ...table.area, rows: table.area.rows + rows } };
  const body = bodyOf(table);
  const steps = [
    grid.injector.get(Tables).step(placed(grown, own.getSheetId())),
    ...growRules(grid, own, body, { ...body, rows: body.rows + rows }),
  ];
  writeAsOneStep(grid, workbook, new Map(written), { steps });
}

/** A cell that is written without its formula, if only for its look, is no longer computed. */
const formulaOf = (cell: Nullable<ICellData>): Pick<ICellData, "f" | "si" | "custom"> => ({
  ...(cell?.f ? { f: cell.f } : {}),
  ...(cell?.si ? { si: cell.si } : {}),
});

/** What was typed for a row that the table did not have yet: only now it is known which row "[@Dose]" means. */
function typedAt(grid: Grid, worksheet: Worksheet, row: number, column: number): Written[] {
  const { formula: known } = (worksheet.getCellRaw(row, column)?.custom ?? {}) as Carried;
  const text = gridFormulaAt(grid, worksheet, row, column);
  return known !== undefined || text === undefined
    ? []
    : [{ row, column, written: fromGrid(text) }];
}

/** The new rows look as the last one, and compute as the others. Gives what they compute as it was written. */
function fillDown(
  grid: Grid,
  worksheet: Worksheet,
  table: Table,
  rows: number,
  written: readonly Written[],
  cells: CellData,
): Written[] {
  const filled: Written[] = [];
  const last = table.area.row + table.area.rows - 1;
  const repeated = columnFormulas(grid, worksheet, table, last + 1);
  for (const column of columnsOf(table)) {
    const pattern = worksheet.getCellRaw(last, column) ?? {};
    const source = repeated.get(column)?.source;
    for (let down = 1; down <= rows; down++) {
      const own = worksheet.getCellRaw(last + down, column);
      const fills = source !== undefined && !holds(own);
      const { custom, ...content } = fills
        ? cellAsIn(grid, worksheet, column, source, last + down)
        : formulaOf(own);
      if (fills) filled.push(...writtenAsIn(written, column, source, [last + down]));
      else filled.push(...typedAt(grid, worksheet, last + down, column));
      putCell(cells, last + down, column, {
        ...(pattern.s ? { s: pattern.s } : {}),
        ...content,
        custom: { ...own?.custom, ...custom },
      });
    }
  }
  return filled;
}
