import type { ICellData, Worksheet } from "@univerjs/core";
import { gridValue } from "../../engine/snapshot";
import type { Grid } from "../../workbench/grid/grid";
import { type CellData, type Step, writeAsOneStep } from "../../workbench/grid/one-step";
import { allTables, placed, Tables } from "../../workbench/tables/tables";
import { overlap } from "../../workbook/areas";
import { type Area, putCell } from "../../workbook/book";
import { freeWord } from "../../workbook/layout/free-names";
import { refuseFilled, refuseTable } from "../blank-cells";
import type { CellValue, Inserted, InsertedTable, NewTable, SheetCell } from "../host";
import { addressIn, cellsAt, openWorkbook, refuseWhileEditing, sheetCell } from "./sheet";
import { takenNames } from "./taken";

/** See SheetHost.insertFormula. */
export function insertFormula(
  grid: Grid,
  address: string,
  formula: string,
  replacing?: SheetCell,
): void {
  refuseWhileEditing(grid);
  const { worksheet, area } = cellsAt(grid, address);
  refuseFilled(sheetCell(grid, worksheet, area.row, area.column), replacing);
  write(grid, worksheet, { ...area, rows: 1, columns: 1 }, [
    [{ f: formula, v: null, t: null, p: null, si: null }],
  ]);
}

/** See SheetHost.insertValues. */
export function insertValues(
  grid: Grid,
  address: string,
  rows: readonly (readonly CellValue[])[],
): Inserted {
  refuseWhileEditing(grid);
  const { worksheet, area } = blankCells(grid, address, rows);
  write(
    grid,
    worksheet,
    area,
    rows.map((row) => row.map(gridValue)),
  );
  return { address: addressIn(worksheet, area) };
}

/** See SheetHost.insertTable. */
export function insertTable(
  grid: Grid,
  address: string,
  { name, columns, rows }: NewTable,
): InsertedTable {
  refuseWhileEditing(grid);
  const all = [columns, ...rows];
  const { worksheet, area } = blankCells(grid, address, all);
  const sheet = worksheet.getName();
  const other = allTables(grid).find((table) => table.sheet === sheet && overlap(table.area, area));
  if (other !== undefined) refuseTable(addressIn(worksheet, area), other.name);
  const free = freeWord(name, takenNames(grid).words);
  const cells = all.map((row, at) =>
    row.map((value): ICellData => ({ ...gridValue(value), ...(at === 0 && { s: { bl: 1 } }) })),
  );
  const table = { name: free, area, columns, headerRow: true, totalsRow: false };
  const step = grid.injector.get(Tables).step(placed(table, worksheet.getSheetId()));
  write(grid, worksheet, area, cells, [step]);
  return { address: addressIn(worksheet, area), name: free };
}

/** As a person's typing: one step to undo, and what depends on it is computed. */
function write(
  grid: Grid,
  worksheet: Worksheet,
  area: Area,
  cells: readonly (readonly ICellData[])[],
  steps: readonly Step[] = [],
): void {
  const written: CellData = {};
  for (const [down, line] of cells.entries())
    for (const [right, cell] of line.entries())
      putCell(written, area.row + down, area.column + right, cell);
  const all = new Map([[worksheet.getSheetId(), written]]);
  writeAsOneStep(grid, openWorkbook(grid), all, { steps });
}

/** The cells that rows will fill from an address on; refuses where one of them holds something. */
function blankCells(grid: Grid, address: string, rows: readonly (readonly unknown[])[]) {
  const { worksheet, area: start } = cellsAt(grid, address);
  const area = { ...start, rows: rows.length, columns: rows[0]?.length ?? 0 };
  for (let row = area.row; row < area.row + area.rows; row++)
    for (let column = area.column; column < area.column + area.columns; column++)
      refuseFilled(sheetCell(grid, worksheet, row, column));
  return { worksheet, area };
}
