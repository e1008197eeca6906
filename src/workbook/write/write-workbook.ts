import type { Table as LibraryTable, Workbook, Worksheet } from "wasm-xlsxwriter";
import { parseArea } from "../address";
import type { Book, Sheet, Table } from "../book";
import { type FunctionNames, storedFormula } from "../formula/stored-form";
import {
  bareSheet,
  type PlannedBook,
  type PlannedSheet,
  type PlannedTable,
} from "../layout/planned";
import { chartOf } from "./charts";
import { insertComment } from "./comments";
import { finish } from "./finish";
import { formatsOf } from "./formats";
import { type Library, xlsxLibrary } from "./library";
import { type Formats, writeCells } from "./sheet-cells";

const a4 = 9;

const plannedSheet = (sheet: Sheet): PlannedSheet => ({ ...bareSheet, ...sheet });

function tableOf(
  library: Library,
  { name, columns, headerRow, totalsRow, ...table }: Table & Partial<PlannedTable>,
  names: FunctionNames,
): LibraryTable {
  const listed = columns.map((header, index) => {
    const column = new library.TableColumn().setHeader(header);
    const formula = table.formulas?.[index];
    if (formula === undefined) return column;
    return column.setFormula(new library.Formula(`=${storedFormula(formula, names)}`));
  });
  return new library.Table()
    .setName(name)
    .setColumns(listed)
    .setHeaderRow(headerRow)
    .setTotalRow(totalsRow)
    .setBandedRows(false)
    .setStyle(library.TableStyle.Light1);
}

function arrange(worksheet: Worksheet, sheet: PlannedSheet): void {
  for (const [column, width] of Object.entries(sheet.columnWidths ?? {}))
    worksheet.setColumnWidth(Number(column), width);
  for (const [row, height] of Object.entries(sheet.rowHeights ?? {}))
    worksheet.setRowHeight(Number(row), height);
  if (sheet.frozen) worksheet.setFreezePanes(sheet.frozen.rows, sheet.frozen.columns);
  if (sheet.hidden) worksheet.setHidden(true);
  worksheet.setScreenGridlines(sheet.gridlines);
  worksheet
    .setPaperSize(a4)
    .setPrintFitToPages(sheet.print.pagesWide ?? 1, sheet.print.pagesTall ?? 0);
  worksheet.setFooter("&L&A&RPage &P of &N");
  if (sheet.print.landscape) worksheet.setLandscape();
  if (sheet.print.area !== undefined) {
    const { row, column, rows, columns } = parseArea(sheet.print.area);
    worksheet.setPrintArea(row, column, row + rows - 1, column + columns - 1);
  }
  const [from, to] = (sheet.print.repeatRows ?? "").split(":").map(Number);
  if (from !== undefined && to !== undefined) worksheet.setRepeatRows(from - 1, to - 1);
}

function writeSheet(
  library: Library,
  workbook: Workbook,
  book: Book,
  sheet: PlannedSheet,
  formats: Formats,
  names: FunctionNames,
): void {
  const worksheet = workbook.addWorksheet().setName(sheet.name);
  arrange(worksheet, sheet);
  for (const { row, column, rows, columns } of sheet.merged ?? [])
    worksheet.mergeRange(row, column, row + rows - 1, column + columns - 1, "", formats(undefined));
  for (const table of book.tables.filter((its) => its.sheet === sheet.name)) {
    const { row, column, rows, columns } = table.area;
    worksheet.addTable(
      row,
      column,
      row + rows - 1,
      column + columns - 1,
      tableOf(library, table, names),
    );
  }
  if (sheet.filter) {
    const { row, column, rows, columns } = sheet.filter.area;
    worksheet.autofilter(row, column, row + rows - 1, column + columns - 1);
  }
  writeCells(library, worksheet, sheet, formats, names);
  for (const comment of sheet.comments) insertComment(library, worksheet, comment);
  for (const chart of sheet.charts)
    worksheet.insertChart(chart.row, chart.column, chartOf(library, book, chart));
}

/**
 * A new .xlsx file from a book, with the charts, rules, validations and print set-up of a planned
 * one. The values that the cells hold become the cached values, so compute the book first.
 */
export async function writeWorkbook(
  book: Book | PlannedBook,
  names: FunctionNames,
): Promise<Uint8Array> {
  const library = await xlsxLibrary();
  const workbook = new library.Workbook();
  const signed = new library.DocProperties().setAuthor("Dosewright");
  workbook.setProperties(
    "title" in book ? signed.setTitle(book.title).setSubject(book.question) : signed,
  );
  const formats = formatsOf(library, book);
  const sheets = book.sheets.map(plannedSheet);
  for (const sheet of sheets) writeSheet(library, workbook, book, sheet, formats, names);
  for (const { name, formula, sheet } of book.definedNames) {
    const scoped = sheet === undefined ? name : `${sheet}!${name}`;
    workbook.defineName(scoped, `=${storedFormula(formula, names)}`);
  }
  return finish(workbook.saveToBufferSync(), book, sheets, names);
}
