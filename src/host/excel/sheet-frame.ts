import { areaAddress } from "../../workbook/address";
import { pixelsOfCharacters } from "../../workbook/column-width";
import type { PlannedSheet } from "../../workbook/layout/planned";

const POINTS_PER_PIXEL = 0.75;

/** Everything around the cells: widths, heights, merged cells, what stays in view, the printed page. */
export function frameSheet(worksheet: Excel.Worksheet, sheet: PlannedSheet): void {
  for (const [column, width] of Object.entries(sheet.columnWidths ?? {})) {
    worksheet.getCell(0, Number(column)).format.columnWidth =
      POINTS_PER_PIXEL * pixelsOfCharacters(width);
  }
  for (const [row, height] of Object.entries(sheet.rowHeights ?? {})) {
    worksheet.getCell(Number(row), 0).format.rowHeight = height;
  }
  for (const area of sheet.merged ?? []) worksheet.getRange(areaAddress(area)).merge();
  worksheet.showGridlines = sheet.gridlines;
  const { rows = 0, columns = 0 } = sheet.frozen ?? {};
  if (rows > 0 && columns > 0) {
    worksheet.freezePanes.freezeAt(worksheet.getRangeByIndexes(0, 0, rows, columns));
  } else if (rows > 0) worksheet.freezePanes.freezeRows(rows);
  else if (columns > 0) worksheet.freezePanes.freezeColumns(columns);
  framePage(worksheet.pageLayout, sheet);
}

function framePage(page: Excel.PageLayout, { print }: PlannedSheet): void {
  page.paperSize = "A4";
  const { pagesWide = 1, pagesTall } = print;
  page.zoom = {
    horizontalFitToPages: pagesWide,
    ...(pagesTall !== undefined && { verticalFitToPages: pagesTall }),
  };
  if (print.area !== undefined) page.setPrintArea(print.area);
  if (print.landscape) page.orientation = "Landscape";
  if (print.repeatRows !== undefined) {
    const [first, last] = print.repeatRows.split(":");
    page.setPrintTitleRows(`$${first}:$${last}`);
  }
  page.headersFooters.defaultForAllPages.leftFooter = "&A";
  page.headersFooters.defaultForAllPages.rightFooter = "Page &P of &N";
}
