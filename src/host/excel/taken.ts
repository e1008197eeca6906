import type { Taken } from "../../workbook/layout/free-names";

/**
 * The names that the workbook uses, in small letters. Defined names and tables share one space; a sheet's
 * own names would shadow what we add, so they count as well.
 */
export async function takenNames(context: Excel.RequestContext): Promise<Taken> {
  const { names, tables, worksheets } = context.workbook;
  names.load("items/name");
  tables.load("items/name");
  worksheets.load("items/name");
  await context.sync();
  for (const sheet of worksheets.items) sheet.names.load("items/name");
  await context.sync();
  const own = worksheets.items.flatMap((sheet) => sheet.names.items);
  const small = (named: readonly { name: string }[]) =>
    new Set(named.map(({ name }) => name.toLowerCase()));
  return {
    sheets: small(worksheets.items),
    words: small([...names.items, ...tables.items, ...own]),
  };
}
