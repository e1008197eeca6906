import type { Area } from "../../workbook/book";
import type { Grid } from "../grid/grid";

/** Selects cells and brings them into view; gives whether the sheet is there. */
export function reveal({ api }: Grid, sheetId: string, area: Area): boolean {
  const book = api.getActiveWorkbook();
  const sheet = book?.getSheetBySheetId(sheetId);
  if (!book || !sheet) return false;
  const { row, column, rows, columns } = area;
  book.setActiveSheet(sheet);
  sheet.getRange(row, column, rows, columns).activate();
  sheet.scrollToCell(Math.max(0, row - 3), Math.max(0, column - 1));
  return true;
}
