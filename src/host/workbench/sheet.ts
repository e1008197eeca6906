import type { Workbook, Worksheet } from "@univerjs/core";
import { isEditing, WHILE_EDITING } from "../../workbench/grid/editing";
import { type Grid, workbookOf } from "../../workbench/grid/grid";
import { formulaAt, valueAt } from "../../workbench/grid/seen-cells";
import { addressOf, areaAddress, parseArea, sheetPrefix } from "../../workbook/address";
import { type Area, isError, type Value } from "../../workbook/book";
import { type CellValue, HostRefusal, type SheetCell } from "../host";
import { NO_SUCH_PLACE, placeOf } from "../place";

export const noSuchPlace = () => new HostRefusal("no such place", NO_SUCH_PLACE);

export function openWorkbook(grid: Grid): Workbook {
  const workbook = workbookOf(grid);
  if (!workbook) throw noSuchPlace();
  return workbook;
}

export function refuseWhileEditing(grid: Grid): void {
  if (isEditing(grid)) throw new HostRefusal("editing", WHILE_EDITING);
}

/** The cells behind an address; one without a sheet's name is on the sheet that is shown. */
export function cellsAt(grid: Grid, address: string): { worksheet: Worksheet; area: Area } {
  const workbook = openWorkbook(grid);
  const { sheet, cells } = placeOf(address);
  const wanted = sheet.toLowerCase();
  const worksheet =
    sheet === ""
      ? workbook.getActiveSheet()
      : workbook.getSheets().find((one) => one.getName().toLowerCase() === wanted);
  if (!worksheet || !/^[a-z]{1,3}\d+(:[a-z]{1,3}\d+)?$/i.test(cells)) throw noSuchPlace();
  const area = parseArea(cells);
  if (area.row + area.rows > worksheet.getRowCount()) throw noSuchPlace();
  if (area.column + area.columns > worksheet.getColumnCount()) throw noSuchPlace();
  return { worksheet, area };
}

export const addressIn = (worksheet: Worksheet, area: Area): string =>
  sheetPrefix(worksheet.getName()) + areaAddress(area);

export function sheetCell(
  grid: Grid,
  worksheet: Worksheet,
  row: number,
  column: number,
): SheetCell {
  const formula = formulaAt(grid, worksheet, row, column);
  return {
    address: sheetPrefix(worksheet.getName()) + addressOf(row, column),
    formula: formula === undefined ? "" : `=${formula}`,
    value: shown(valueAt(grid, worksheet, row, column)),
  };
}

export const shown = (value: Value): CellValue => (isError(value) ? value.error : value);
