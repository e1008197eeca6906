import { impossible } from "../model/refusal";
import type { Entry, Item } from "./entry";
import { nameKey } from "./names";

/** A cell of a table that a person keeps: an error in a cell is held until the cell is asked for. */
export type OwnCell = string | number | boolean | null | Error;
export type OwnCells = readonly (readonly OwnCell[])[];

const SOURCE = "Your own table.";

/**
 * Reads a table with names in its first column and properties in its first row. A unit in brackets behind
 * a property is taken as its unit: "COD factor [g/g]". Blank cells say nothing, so that the built-in value
 * stands for them. A 0 is refused where it is asked for: a sheet may hand over a blank cell as 0.
 */
export function ownItems(cells: OwnCells | null): readonly Item[] {
  if (cells === null) return [];
  const [header, ...rows] = cells;
  const properties = (header ?? []).map(readHeader);
  if (rows.length === 0 || properties.length < 2) impossible(LAYOUT);
  refuseRepeats(properties.slice(1).map((property) => property.name));

  const items = rows.flatMap((row) => {
    const name = textOf(row[0]);
    return name === "" ? [] : [ownItem(name, properties, row)];
  });
  refuseRepeats(items.map((item) => item.name));
  return items;
}

interface Header {
  readonly name: string;
  readonly unit: string;
}

function ownItem(name: string, properties: readonly Header[], row: readonly OwnCell[]): Item {
  const known = new Map<string, Entry>();
  for (let column = 1; column < properties.length; column++) {
    const { name: property, unit } = properties[column] as Header;
    const value = row[column] ?? null;
    if (property === "" || value === null || value === "") continue;
    known.set(property, ownEntry(name, property, unit, value));
  }
  const kind = textOf(row[properties.findIndex((property) => property.name === "kind")]);
  return { name, kind, properties: known };
}

/**
 * What an own table says where the library knows the property, too. A number that was merely copied from the
 * library is no measurement: it stays known as the library knows it.
 */
export function ownOrBuiltIn(own: Entry, builtIn: Entry): Entry {
  try {
    return own.value === builtIn.value ? builtIn : own;
  } catch {
    // A faulty cell says itself what is wrong with it.
    return own;
  }
}

/** The value is looked at when it is asked for, so that one faulty cell spoils its own answer only. */
function ownEntry(name: string, property: string, unit: string, cell: OwnCell): Entry {
  return {
    unit,
    evidence: "own table",
    source: SOURCE,
    get value() {
      if (cell instanceof Error) throw cell;
      if (cell === 0) {
        impossible(
          `${name} has 0 or a blank for ${property} in your own table; a sheet does not tell which. Give a number above 0, or type '0, with the apostrophe, where it is none.`,
        );
      }
      return typeof cell === "string" && cell.trim() === "0" ? 0 : (cell as string | number);
    },
  };
}

/** "COD factor [g/g]" is the property "COD factor" in g/g. */
function readHeader(cell: OwnCell): Header {
  const [, name = "", unit = ""] = /^(.*?)(?:\[([^\]]*)\])?$/.exec(textOf(cell)) ?? [];
  return { name: nameKey(name), unit: unit.trim() };
}

function textOf(cell: OwnCell | undefined): string {
  return typeof cell === "string" || typeof cell === "number" ? String(cell).trim() : "";
}

function refuseRepeats(names: readonly string[]): void {
  const seen = new Set<string>();
  for (const name of names) {
    const key = nameKey(name);
    if (key !== "" && seen.has(key)) {
      impossible(`Your own table has "${name}" twice. Give each name and each property once.`);
    }
    seen.add(key);
  }
}

const LAYOUT =
  "Your own table has no values. Give names in its first column and properties in its first row.";
