import type { Table } from "../book";
import { isActive } from "../filter";
import type { WorkbookPackage } from "../package/open-package";
import { partsOf, relationshipsOf } from "../package/relationships";
import { readShortXml } from "../xml";
import { unescapeText } from "../xml-text";
import { FilterReader } from "./filter";
import { areaIn } from "./place";

async function readTable(
  file: WorkbookPackage,
  path: string,
  sheet: string,
): Promise<Table | undefined> {
  let table: Omit<Table, "columns"> | undefined;
  const columns: string[] = [];
  const filter = new FilterReader();
  readShortXml(path, await file.text(path), {
    open({ name, attributes }) {
      filter.open(name, attributes);
      if (name === "tableColumn") columns.push(unescapeText(attributes.name ?? ""));
      if (name !== "table" || !attributes.ref) return;
      table = {
        name: attributes.displayName ?? attributes.name ?? "",
        sheet,
        area: areaIn(attributes.ref),
        headerRow: attributes.headerRowCount !== "0",
        totalsRow: (attributes.totalsRowCount ?? "0") !== "0",
      };
    },
    close: (name) => filter.close(name),
  });
  const its = filter.filter();
  return table && { ...table, columns, ...(its && isActive(its) && { filter: its }) };
}

/** Where the tables of a sheet are kept. */
export async function tablePaths(file: WorkbookPackage, sheetPath: string): Promise<string[]> {
  return [...new Set(partsOf(file, await relationshipsOf(file, sheetPath), "table"))];
}

export async function readTables(
  file: WorkbookPackage,
  sheetPath: string,
  sheet: string,
): Promise<Table[]> {
  const tables: Table[] = [];
  for (const path of await tablePaths(file, sheetPath)) {
    const table = await readTable(file, path, sheet);
    if (table) tables.push(table);
  }
  return tables;
}
