/** Of a workbook that was opened, what its sheets hold beside their cells, as far as a plan could say it. */
import type { Book } from "../../workbook/book";
import { bareSheet, type PlannedBook, type PlannedChart } from "../../workbook/layout/planned";

export const openedSheets = (
  book: Book,
  charts: readonly (readonly PlannedChart[])[],
): Pick<PlannedBook, "sheets" | "tables" | "styles"> => ({
  sheets: book.sheets.map((sheet, index) => ({
    ...bareSheet,
    ...sheet,
    charts: charts[index] ?? [],
  })),
  tables: book.tables.map((table) => ({ ...table, formulas: [] })),
  styles: {},
});
