import type { ICellData, Worksheet } from "@univerjs/core";
import { gridValue } from "../../engine/snapshot";
import type { Carried } from "../../workbench/book/grid-book";
import { allTables } from "../../workbench/formulas/typed-formulas";
import type { Grid } from "../../workbench/grid/grid";
import { overlap } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { freeWord } from "../../workbook/layout/free-names";
import { refuseFilled, refuseTable } from "../blank-cells";
import type { CellValue, Inserted, InsertedTable, NewTable, SheetCell } from "../host";
import { addressIn, cellsAt, refuseWhileEditing, sheetCell } from "./sheet";
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
  carry(cells[0]?.[0], { tableStart: { name: free, headerRow: true } });
  carry(cells.at(-1)?.at(-1), { tableEnd: { name: free, totalsRow: false } });
  write(grid, worksheet, area, cells);
  return { address: addressIn(worksheet, area), name: free };
}

function carry(cell: ICellData | undefined, carried: Carried): void {
  if (cell) cell.custom = { ...cell.custom, ...carried };
}

/** As a person's typing: one step to undo, and what depends on it is computed. */
function write(grid: Grid, worksheet: Worksheet, area: Area, cells: ICellData[][]): void {
  const { row, column, rows, columns } = area;
  grid.api
    .getActiveWorkbook()
    ?.getSheetBySheetId(worksheet.getSheetId())
    ?.getRange(row, column, rows, columns)
    .setValues(cells);
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
