import type { ICellData, Worksheet } from "@univerjs/core";
import { gridValue } from "../../engine/snapshot";
import type { Carried } from "../../workbench/book/grid-book";
import { allTables } from "../../workbench/formulas/typed-formulas";
import type { Grid } from "../../workbench/grid/grid";
import { overlap } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { freeWord } from "../../workbook/layout/free-names";
import {
  type CellValue,
  HostRefusal,
  type Inserted,
  type InsertedTable,
  type NewTable,
  type SheetCell,
} from "../host";
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
  const cell = sheetCell(grid, worksheet, area.row, area.column);
  const agreed =
    replacing !== undefined && replacing.formula === cell.formula && replacing.value === cell.value;
  if (!isBlank(cell) && !agreed) throw occupied(cell);
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
  if (other !== undefined)
    throw new HostRefusal(
      "occupied",
      `${addressIn(worksheet, area)} reaches into the table ${other.name}. Select a cell beside it and try again.`,
    );
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
    for (let column = area.column; column < area.column + area.columns; column++) {
      const cell = sheetCell(grid, worksheet, row, column);
      if (!isBlank(cell)) throw occupied(cell);
    }
  return { worksheet, area };
}

const isBlank = ({ formula, value }: SheetCell) => formula === "" && value === null;

function occupied({ address, formula, value }: SheetCell): HostRefusal {
  const holds = formula === "" ? String(value) : formula;
  const short = holds.length > 60 ? `${holds.slice(0, 59)}…` : holds;
  return new HostRefusal(
    "occupied",
    `${address} is not blank: it holds ${short}. Select blank cells and try again.`,
  );
}
