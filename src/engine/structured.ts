/**
 * References to tables (Log[Dose], Log[[#This Row],[Dose (kg/t)]], Log[@Dose]) turned into ranges. The
 * grid's own reading of them fails at names and titles that people do use: an underscore, a bracket, a comma.
 */
import { columnName, sheetPrefix } from "../workbook/address";
import { holdsCell } from "../workbook/areas";
import type { Table } from "../workbook/book";

export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** A name, or nothing, before an opening square bracket; or a name alone. Text and sheet names are passed over. */
const candidates =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'!|(?<![\p{L}\p{N}_.!'\]])([\p{L}_\\][\p{L}\p{N}_.\\]*)?(\[)|(?<![\p{L}\p{N}_.!'])([\p{L}_\\][\p{L}\p{N}_.\\]*)(?![\p{L}\p{N}_.\\([!])/gu;

export const expandTables: Rewriting = (formula, tables, place) =>
  rewritten(formula, tables, place, (table, specifier) => range(table, specifier ?? "", place));

/**
 * As files say them (ECMA-376 Part 1, 18.17.2: no "@", a table by its name): a person types Log[@Dose], or
 * [@Dose] in a row of the table itself.
 */
export const withTableNames: Rewriting = (formula, tables, place) =>
  rewritten(formula, tables, place, ({ name }, specifier) =>
    specifier === undefined ? name : `${name}[${withoutAt(specifier)}]`,
  );

type Rewriting = (formula: string, tables: readonly Table[], place: Place) => string;

function withoutAt(specifier: string): string {
  const [, columns] = /^\s*@\s*(.*?)\s*$/s.exec(specifier) ?? [];
  if (columns === undefined) return specifier;
  if (columns === "") return "#This Row";
  return `[#This Row],${columns.startsWith("[") ? columns : `[${columns}]`}`;
}

function rewritten(
  formula: string,
  tables: readonly Table[],
  place: Place,
  rewrite: (table: Table, specifier: string | undefined) => string,
): string {
  if (tables.length === 0) return formula;
  let result = "";
  let from = 0;
  candidates.lastIndex = 0;
  for (let match = candidates.exec(formula); match; match = candidates.exec(formula)) {
    const [, named, bracket, alone] = match;
    const name = named ?? alone;
    const table =
      name !== undefined
        ? tables.find((one) => one.name.toLowerCase() === name.toLowerCase())
        : bracket && tableAround(tables, place);
    if (!table) continue;
    const end = bracket ? closing(formula, candidates.lastIndex - 1) : candidates.lastIndex;
    if (end === undefined) continue;
    const specifier = bracket ? formula.slice(candidates.lastIndex, end - 1) : undefined;
    result += formula.slice(from, match.index) + rewrite(table, specifier);
    from = end;
    candidates.lastIndex = end;
  }
  return result + formula.slice(from);
}

const tableAround = (tables: readonly Table[], { sheet, row, column }: Place) =>
  tables.find(
    ({ area, sheet: its }) =>
      its.toLowerCase() === sheet.toLowerCase() && holdsCell(area, row, column),
  );

/** Just behind the bracket that closes the one at `start`; an apostrophe takes away the meaning of the next sign. */
function closing(formula: string, start: number): number | undefined {
  let depth = 0;
  for (let at = start; at < formula.length; at++) {
    const sign = formula[at];
    if (sign === "'") at++;
    else if (sign === "[") depth++;
    else if (sign === "]" && --depth === 0) return at + 1;
  }
  return undefined;
}

interface Wanted {
  readonly parts: Set<string>;
  readonly columns: string[];
}

const unescaped = (title: string) => title.replace(/'(.)/gs, "$1");
const bracketed = /\[((?:'.|[^\]'])*)\]/gs;

/** "#All", "Dose", "@Dose", "@[Dose]:[Day]", "[#Totals],[Dose]" … → parts of the table and titles of columns. */
function read(specifier: string): Wanted {
  const text = specifier.trim();
  const parts = new Set<string>();
  const columns: string[] = [];
  const rest = text.startsWith("@") ? text.slice(1).trim() : text;
  if (rest !== text) parts.add("#this row");
  const items = rest.startsWith("[")
    ? [...rest.matchAll(bracketed)].map(([, item]) => item)
    : [rest];
  for (const item of items) {
    if (!item) continue;
    if (item.startsWith("#")) parts.add(item.toLowerCase());
    else columns.push(unescaped(item));
  }
  return { parts, columns };
}

function range(table: Table, specifier: string, place: Place): string {
  const { parts, columns } = read(specifier);
  const rows = rowsOf(table, parts, place);
  if (typeof rows === "string") return rows;
  const indices = columns.map((title) =>
    table.columns.findIndex((one) => one.toLowerCase() === title.toLowerCase()),
  );
  if (indices.includes(-1)) return "#REF!";
  const first = table.area.column + (indices[0] ?? 0);
  const last = table.area.column + (indices.at(-1) ?? table.area.columns - 1);
  const sheet =
    table.sheet.toLowerCase() === place.sheet.toLowerCase() ? "" : sheetPrefix(table.sheet);
  // In a column that is filled down, "this row" must move with the row.
  const dollar = parts.has("#this row") ? "" : "$";
  const at = (row: number, column: number) => `$${columnName(column)}${dollar}${row + 1}`;
  const [top, bottom] = rows;
  const one = top === bottom && first === last;
  return sheet + at(top, first) + (one ? "" : `:${at(bottom, last)}`);
}

function rowsOf(table: Table, parts: Set<string>, place: Place): [number, number] | string {
  const { row, rows } = table.area;
  const header = row;
  const totals = row + rows - 1;
  const first = table.headerRow ? row + 1 : row;
  const last = table.totalsRow ? totals - 1 : totals;
  if (parts.has("#this row"))
    return place.row >= first && place.row <= last ? [place.row, place.row] : "#VALUE!";
  if (parts.has("#all")) return [header, totals];
  if (parts.has("#headers") && !table.headerRow) return "#REF!";
  if (parts.has("#totals") && !table.totalsRow) return "#REF!";
  const data = parts.size === 0 || parts.has("#data");
  return [
    parts.has("#headers") ? header : data ? first : totals,
    parts.has("#totals") ? totals : data ? last : header,
  ];
}
