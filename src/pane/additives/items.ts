import type { SheetHost, SheetTable } from "../../host/host";
import { ADDITIVES } from "../../library/additives";
import { COMPONENTS } from "../../library/components";
import type { Entry, Item } from "../../library/entry";
import { called, nameKey } from "../../library/names";
import { ownItems, ownOrBuiltIn } from "../../library/own-table";
import { search } from "../parts/search";

/** What the library knows things as: each kind has its function, and its own tables in the sheet. */
export const SHELVES = {
  additive: { items: ADDITIVES, header: "Additive", lookUp: "LIBRARY.ADDITIVE" },
  component: { items: COMPONENTS, header: "Component", lookUp: "LIBRARY.COMPONENT" },
} as const;

export type Shelf = keyof typeof SHELVES;

/** As many as stand side by side in a narrow pane. */
export const MOST_COMPARED = 3;

/** An additive or a component as the pane lists it. */
export interface Listed extends Item {
  readonly shelf: Shelf;
  /** The sheet table that holds it; undefined for what is built in. */
  readonly table?: string;
}

/** A table of the sheet that the library cannot read, and why. */
export interface Unread {
  readonly table: string;
  readonly reason: string;
}

export interface Stock {
  readonly items: readonly Listed[];
  readonly unread: readonly Unread[];
}

/** What is built in, and before it what the sheet's own tables hold. */
export async function readStock(host: SheetHost | undefined): Promise<Stock> {
  const items: Listed[] = [];
  const unread: Unread[] = [];
  const tables = await ownTables(host);
  for (const shelf of Object.keys(SHELVES) as Shelf[]) {
    const own: Listed[] = [];
    for (const table of tables.filter((one) => shelfOf(one) === shelf)) {
      try {
        own.push(
          ...ownItems(cellsOf(table)).map((item) => ({ ...item, shelf, table: table.name })),
        );
      } catch (problem) {
        unread.push({ table: table.name, reason: (problem as Error).message });
      }
    }
    items.push(...withOwn(shelf, own));
  }
  return { items, unread };
}

/** A table of one's own may simply call its first column so. */
const NAME = "name";

async function ownTables(host: SheetHost | undefined): Promise<readonly SheetTable[]> {
  if (host === undefined) return [];
  const headers = [...Object.values(SHELVES).map(({ header }) => header), NAME];
  return (await Promise.all(headers.map((header) => host.readTables(header)))).flat();
}

/**
 * Where a table belongs: by the header of its names and a property that its shelf knows; without that header by
 * a property that the other shelf does not know. A furnish with its shares, or a record of what was used, is no
 * list of what is known of things.
 */
function shelfOf({ columns }: SheetTable): Shelf | undefined {
  const [first, ...rest] = columns.map(headerKey);
  const shelves = Object.keys(SHELVES) as Shelf[];
  const named = shelves.find((shelf) => first === headerKey(SHELVES[shelf].header));
  return (named === undefined ? shelves : [named]).find((shelf) => {
    const others = named ? [] : shelves.filter((other) => other !== shelf).flatMap(propertiesOf);
    const told = propertiesOf(shelf).filter((property) => !others.includes(property));
    return rest.some((header) => told.includes(header));
  });
}

/** "COD factor [g/g]" is the property "cod factor". */
const headerKey = (header: string) => nameKey(header.replace(/\[[^\]]*\]$/, ""));

const propertiesOf = (shelf: Shelf): readonly string[] =>
  SHELVES[shelf].items.flatMap(({ properties }) => [...properties.keys()].map(nameKey));

const cellsOf = ({ columns, rows }: SheetTable) => [columns, ...rows];

/** Own entries go first, property by property: what they leave out is taken from the built-in one. */
function withOwn(shelf: Shelf, own: readonly Listed[]): readonly Listed[] {
  const builtIn: readonly Item[] = SHELVES[shelf].items;
  const completed = own.map((item) => {
    const same = called(item.name, builtIn);
    if (same === undefined) return item;
    const kind = item.kind === "" ? same.kind : item.kind;
    return { ...item, kind, properties: together(item.properties, same.properties) };
  });
  const taken = new Set(own.map(({ name }) => nameKey(name)));
  return [
    ...completed,
    ...builtIn.filter(({ name }) => !taken.has(nameKey(name))).map((item) => ({ ...item, shelf })),
  ];
}

function together(
  fromTable: ReadonlyMap<string, Entry>,
  builtIn: ReadonlyMap<string, Entry>,
): ReadonlyMap<string, Entry> {
  const ownByKey = new Map([...fromTable].map(([property, entry]) => [nameKey(property), entry]));
  const merged = new Map<string, Entry>();
  for (const [property, entry] of builtIn) {
    const own = ownByKey.get(nameKey(property));
    merged.set(property, own === undefined ? entry : ownOrBuiltIn(own, entry));
    ownByKey.delete(nameKey(property));
  }
  for (const [property, entry] of ownByKey) merged.set(property, entry);
  return merged;
}

/** The kinds there are, in the order of the list. */
export const kindsOf = (items: readonly Listed[], shelf: Shelf): readonly string[] => [
  ...new Set(items.filter((item) => item.shelf === shelf).map(kindOf)),
];

export const kindOf = ({ kind }: Listed) => (kind === "" ? "no kind given" : kind);

/** The items of a kind ("" for all) that answer a search. */
export function findItems(
  items: readonly Listed[],
  kind: string,
  query: string,
): readonly Listed[] {
  const ofKind = kind === "" ? items : items.filter((item) => kindOf(item) === kind);
  return search(query, ofKind, ({ name, kind: own, alsoCalled = [], properties }) => [
    name,
    own,
    ...alsoCalled,
    ...["chemistry", "charge"].map((property) => String(properties.get(property)?.value ?? "")),
  ]);
}

export const keyOf = ({ shelf, name }: Listed) => `${shelf} ${nameKey(name)}`;

/** An entry's value, or the words of the refusal that a faulty cell of an own table gives. */
export function entryValue(entry: Entry): Entry["value"] {
  try {
    return entry.value;
  } catch (problem) {
    return (problem as Error).message;
  }
}
