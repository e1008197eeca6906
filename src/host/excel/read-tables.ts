import type { SheetTable } from "../host";
import { inExcel } from "./batch";
import { shownValue } from "./cells";

const isSame = (one: string, other: string) => one.trim().toLowerCase() === other.toLowerCase();

/** See SheetHost.readTables. Headers are read first, so that a large table of another kind is not. */
export function readTables(firstHeader: string): Promise<readonly SheetTable[]> {
  return inExcel(async (context) => {
    const { tables } = context.workbook;
    tables.load("items/name,items/showHeaders");
    await context.sync();
    const headed = tables.items
      .filter(({ showHeaders }) => showHeaders)
      .map((table) => ({ table, header: table.getHeaderRowRange() }));
    for (const { header } of headed) header.load("values");
    await context.sync();
    const wanted = headed
      .filter(({ header }) => isSame(String(header.values[0]?.[0]), firstHeader))
      .map(({ table, header }) => ({
        table,
        header,
        range: table.getRange(),
        body: table.getDataBodyRange(),
      }));
    for (const { range, body } of wanted) {
      range.load("address");
      body.load("values");
    }
    await context.sync();
    return wanted.map(({ table, header, range, body }) => ({
      name: table.name,
      address: range.address,
      columns: (header.values[0] ?? []).map(String),
      rows: body.values.map((row: unknown[]) => row.map(shownValue)),
    }));
  });
}
