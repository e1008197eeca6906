import { noAnswer } from "../model/refusal";
import { ADDITIVES } from "./additives";
import { COMPONENTS } from "./components";
import type { Entry, Item } from "./entry";
import { called, nameKey, nearestNames } from "./names";
import { type OwnCells, ownItems, ownOrBuiltIn } from "./own-table";

/** Names of the additives, own ones first; with `kind` those of that kind, or of kinds that hold its words. */
export function additiveNames(kind: string | undefined, own: OwnCells | null): readonly string[] {
  const items = together(ownItems(own), ADDITIVES);
  if (kind === undefined) return items.map(({ name }) => name);
  const wanted = nameKey(kind);
  const found = items.filter((item) => nameKey(item.kind).includes(wanted));
  if (found.length === 0) {
    const kinds = [...new Set(items.map((item) => item.kind))].filter((one) => one !== "");
    noAnswer(`The library has no kind "${kind}". Give one of: ${kinds.join(", ")}.`);
  }
  return found.map(({ name }) => name);
}

/** Names of the components of the furnish, own ones first. */
export function componentNames(own: OwnCells | null): readonly string[] {
  return together(ownItems(own), COMPONENTS).map(({ name }) => name);
}

export function additiveProperty(name: string, property: string, own: OwnCells | null): Entry {
  return find("additive", ADDITIVES, name, property, own);
}

export function componentProperty(name: string, property: string, own: OwnCells | null): Entry {
  return find("component", COMPONENTS, name, property, own);
}

/** The same for either, to say where a number comes from. */
export function anyProperty(name: string, property: string, own: OwnCells | null): Entry {
  return find("additive or component", [...ADDITIVES, ...COMPONENTS], name, property, own);
}

/** The number that an entry holds, or its text; the user's own table goes before the built-in one, cell by cell. */
function find(
  what: string,
  builtIn: readonly Item[],
  name: string,
  property: string,
  own: OwnCells | null,
): Entry {
  const ownOnes = ownItems(own);
  const found = [ownOnes, builtIn].flatMap((items) => {
    const item = called(name, items);
    return item === undefined ? [] : [item];
  });
  const [first] = found;
  if (first === undefined) {
    const names = together(ownOnes, builtIn).map((item) => item.name);
    noAnswer(
      `The library has no ${what} "${name}". The nearest names are: ${nearestNames(name, names).join("; ")}.`,
    );
  }
  const [entry, behind] = found.flatMap((item) => entryOf(item, property) ?? []);
  if (entry !== undefined) return behind === undefined ? entry : ownOrBuiltIn(entry, behind);
  const known = [...new Set(found.flatMap((item) => [...item.properties.keys()]))];
  const has =
    known.length > 0 ? `It has: ${known.join(", ")}.` : "Its row in your own table is blank.";
  return noAnswer(`${first.name} has no "${property}". ${has}`);
}

function entryOf({ properties }: Item, property: string): Entry | undefined {
  for (const [known, entry] of properties) if (nameKey(known) === nameKey(property)) return entry;
  return undefined;
}

function together(own: readonly Item[], builtIn: readonly Item[]): readonly Item[] {
  const ownKeys = new Set(own.map((item) => nameKey(item.name)));
  return [...own, ...builtIn.filter((item) => !ownKeys.has(nameKey(item.name)))];
}
