import { freeWord } from "../../workbook/layout/free-names";
import { refuseFilled, refuseTable } from "../blank-cells";
import type { CellValue, Inserted, InsertedTable, NewTable, SheetCell } from "../host";
import { inExcel } from "./batch";
import { cellWithin, firstCell, rangeAt, shownFormula, shownValue, typedValue } from "./cells";
import { takenNames } from "./taken";

/** See SheetHost.insertFormula. */
export function insertFormula(
  address: string,
  formula: string,
  replacing?: SheetCell,
): Promise<void> {
  return inExcel(async (context) => {
    const range = rangeAt(context, address);
    range.load("address,formulas,values");
    await context.sync();
    refuseFilled(firstCell(range), replacing);
    range.formulas = [[formula]];
    await context.sync();
  });
}

/** See SheetHost.insertValues. */
export function insertValues(
  address: string,
  rows: readonly (readonly CellValue[])[],
): Promise<Inserted> {
  return inExcel(async (context) => {
    const range = await blankRange(context, address, rows);
    range.values = rows.map((row) => row.map(typedValue));
    await context.sync();
    return { address: range.address };
  });
}

/** See SheetHost.insertTable. */
export function insertTable(
  address: string,
  { name, columns, rows }: NewTable,
): Promise<InsertedTable> {
  return inExcel(async (context) => {
    const all = [columns, ...rows];
    const range = await blankRange(context, address, all);
    const tables = range.getTables(false);
    tables.load("items/name");
    const { words } = await takenNames(context);
    const other = tables.items[0];
    if (other !== undefined) refuseTable(range.address, other.name);
    range.values = all.map((row) => row.map(typedValue));
    const table = range.worksheet.tables.add(range, true);
    const free = freeWord(name, words);
    table.name = free;
    await context.sync();
    return { address: range.address, name: free };
  });
}

/** The cells that rows will fill from an address on; refuses where one of them holds something. */
async function blankRange(
  context: Excel.RequestContext,
  address: string,
  rows: readonly (readonly unknown[])[],
): Promise<Excel.Range> {
  const columns = rows[0]?.length ?? 0;
  const start = rangeAt(context, address);
  const range = start.getCell(0, 0).getResizedRange(rows.length - 1, columns - 1);
  range.load("address,formulas,values");
  await context.sync();
  range.formulas.forEach((line: unknown[], row) => {
    line.forEach((formula, column) => {
      const value = shownValue(range.values[row]?.[column]);
      const address = cellWithin(range.address, row, column);
      refuseFilled({ address, formula: shownFormula(formula), value });
    });
  });
  return range;
}
