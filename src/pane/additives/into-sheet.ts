import type { CellValue, NewTable } from "../../host/host";
import type { Entry } from "../../library/entry";
import { entryValue, type Listed, SHELVES, type Shelf } from "./items";

/** The formula that looks a property up, so that the cell goes on saying where its number comes from. */
export function lookUpFormula(namespace: string, item: Listed, property: string): string {
  const given = [quoted(item.name), quoted(property)];
  if (item.table !== undefined) given.push(`${item.table}[#All]`);
  return `=${namespace}.${SHELVES[item.shelf].lookUp}(${given.join(",")})`;
}

const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;

/** Items as rows under a header, each property with its unit: what a sheet, or an own table, takes. */
export function rowsOf(shelf: Shelf, items: readonly Listed[]): readonly (readonly CellValue[])[] {
  const units = new Map<string, string>();
  for (const { properties } of items) {
    for (const [property, { unit }] of properties) {
      if (!units.has(property)) units.set(property, unit);
    }
  }
  const columns = [...units].map(([property, unit]) =>
    unit === "" || unit === "text" ? property : `${property} [${unit}]`,
  );
  return [
    [SHELVES[shelf].header, ...columns],
    ...items.map(({ name, properties }) => [
      name,
      ...[...units.keys()].map((property) => cellOf(properties.get(property))),
    ]),
  ];
}

/** A blank says nothing and a 0 is taken for a blank, so a real 0 stands as a text in an own table. */
function cellOf(entry: Entry | undefined): CellValue {
  if (entry === undefined) return null;
  const value = entryValue(entry);
  return value === 0 ? "0" : value;
}

/** A table of one's own to start from: names in the first column, as the library reads it. */
export function ownTable(shelf: Shelf, items: readonly Listed[]): NewTable {
  const [columns, ...rows] = rowsOf(shelf, items);
  return {
    name: `own${SHELVES[shelf].header}s`,
    columns: (columns as readonly CellValue[]).map(String),
    rows,
  };
}
