import { areaAddress } from "../../workbook/address";
import type { Taken } from "../../workbook/layout/free-names";
import type { PlannedBook } from "../../workbook/layout/planned";
import { inExcel, refuse } from "./batch";
import { addChart, rangeIn } from "./charts";
import { addEntryRule, addFormat } from "./rules";
import { frameSheet } from "./sheet-frame";
import { takenNames } from "./taken";
import { withNamespace, writeFormulas, writeStyles, writeValues } from "./write-cells";

/**
 * See SheetHost.addSheets. Formulas come after the sheets, tables and names that they speak of; what
 * fails half-way is taken back.
 */
export function addSheets(
  makeBook: (taken: Taken) => PlannedBook,
  namespace: string,
): Promise<readonly string[]> {
  return inExcel(async (context) => {
    const book = makeBook(await takenNames(context));
    const sheets = book.sheets.map(({ name }) => name);
    try {
      for (const name of sheets) context.workbook.worksheets.add(name);
      await context.sync();
      context.application.suspendScreenUpdatingUntilNextSync();
      fill(context, book, namespace);
      const [first] = sheets;
      if (first !== undefined) context.workbook.worksheets.getItem(first).activate();
      await context.sync();
    } catch (problem) {
      await takeBack(context, book).catch(() => {
        throw refuse("lost", `Excel stopped half-way. Delete these sheets: ${sheets.join(", ")}.`);
      });
      throw problem;
    }
    return sheets;
  });
}

function fill(context: Excel.RequestContext, book: PlannedBook, namespace: string): void {
  const { names, worksheets } = context.workbook;
  const sheets = book.sheets.map((sheet) => ({ sheet, worksheet: worksheets.getItem(sheet.name) }));
  for (const { sheet, worksheet } of sheets) {
    writeValues(worksheet, sheet);
    writeStyles(worksheet, sheet, book);
  }
  for (const planned of book.tables) {
    const worksheet = worksheets.getItem(planned.sheet);
    const table = worksheet.tables.add(worksheet.getRange(areaAddress(planned.area)), true);
    table.name = planned.name;
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
  }
  for (const { name, formula } of book.definedNames) {
    names.add(name, `=${withNamespace(formula, namespace)}`);
  }
  for (const { sheet, worksheet } of sheets) {
    writeFormulas(worksheet, sheet, namespace);
    for (const rule of sheet.entryRules) addEntryRule(worksheet, rule, namespace);
    for (const format of sheet.formats) addFormat(worksheet, format, namespace);
    frameSheet(worksheet, sheet);
  }
  for (const { sheet, worksheet } of sheets) {
    for (const chart of sheet.charts) addChart(worksheet, chart, rangeIn(context));
  }
}

/** Deletes the sheets and the names that were added; those of the workbook had other names. */
async function takeBack(context: Excel.RequestContext, book: PlannedBook): Promise<void> {
  const { names, worksheets } = context.workbook;
  const added = [
    ...book.definedNames.map(({ name }) => names.getItemOrNullObject(name)),
    ...book.sheets.map(({ name }) => worksheets.getItemOrNullObject(name)),
  ];
  for (const one of added) one.load("name");
  await context.sync();
  for (const one of added) if (!one.isNullObject) one.delete();
  await context.sync();
}
