import { addressOf, areaAddress, sheetPrefix } from "../address";
import type { Area } from "../book";
import type { CellsOf } from "./planned";

/** What a symbol of a plan stands for, once its sheet, names and tables have their own names. */
export type Meaning =
  | { readonly kind: "name"; readonly sheet: string; readonly area: Area; readonly name: string }
  | {
      readonly kind: "table";
      readonly sheet: string;
      /** Header row included. */
      readonly area: Area;
      readonly name: string;
      readonly headers: ReadonlyMap<string, string>;
    }
  | { readonly kind: "spill" | "block"; readonly sheet: string; readonly area: Area };

export type Symbols = ReadonlyMap<string, Meaning>;

/** Where a formula stands: it decides on sheet prefixes and on what "this row" and "this cell" are. */
export interface Place {
  readonly sheet: string;
  readonly table?: string;
  /** The first cell of a rule or a validation. */
  readonly cell?: { readonly row: number; readonly column: number };
}

const symbolPattern =
  /"(?:[^"]|"")*"|\{(@?[a-z][A-Za-z0-9]*)(?:\.([A-Za-z][A-Za-z0-9]*))?(?:\[(\d+)(?:,(\d+))?\])?\}/g;

interface Reference {
  readonly symbol: string;
  readonly column: string | undefined;
  /** Counted from 1, as written. */
  readonly first: number | undefined;
  readonly second: number | undefined;
}

const escapedHeader = (header: string): string => header.replace(/['[\]#]/g, "'$&");

const plainHeader = /^[A-Za-z_][A-Za-z0-9_ ]*$/;

/** A column of a table as a formula writes it: log[Day], log[[Steam (t/h)]]. */
function structured(table: string, header: string): string {
  const escaped = escapedHeader(header);
  return plainHeader.test(header) ? `${table}[${escaped}]` : `${table}[[${escaped}]]`;
}

function absolute(area: Area): string {
  return areaAddress(area).replace(/[A-Z]+|\d+/g, "$$$&");
}

function meaningOf(symbols: Symbols, symbol: string): Meaning {
  const meaning = symbols.get(symbol);
  if (!meaning) throw new Error(`The plan has no part named "${symbol}".`);
  return meaning;
}

function headerOf(meaning: Meaning & { kind: "table" }, key: string): string {
  const header = meaning.headers.get(key);
  if (header === undefined) throw new Error(`The table "${meaning.name}" has no column "${key}".`);
  return header;
}

function tableFormula(meaning: Meaning & { kind: "table" }, key: string | undefined): string {
  if (key === undefined) return meaning.name;
  return key === "all" ? `${meaning.name}[#All]` : structured(meaning.name, headerOf(meaning, key));
}

/** The body of a table, all of it, or one column of its body. */
function areaOfTable(meaning: Meaning & { kind: "table" }, key: string | undefined): Area {
  if (key === "all") return meaning.area;
  const body = { ...meaning.area, row: meaning.area.row + 1, rows: meaning.area.rows - 1 };
  if (key === undefined) return body;
  return columnAt(body, [...meaning.headers.values()].indexOf(headerOf(meaning, key)) + 1);
}

function thisRow(symbols: Symbols, key: string, place: Place): string {
  const meaning = place.table === undefined ? undefined : symbols.get(place.table);
  if (meaning?.kind !== "table") throw new Error(`{@${key}} stands outside a table.`);
  return `${meaning.name}[[#This Row],[${escapedHeader(headerOf(meaning, key))}]]`;
}

function formulaOf(symbols: Symbols, { symbol, column, first, second }: Reference, place: Place) {
  if (symbol === "cell" && place.cell) return addressOf(place.cell.row, place.cell.column);
  if (symbol.startsWith("@")) return thisRow(symbols, symbol.slice(1), place);
  const meaning = meaningOf(symbols, symbol);
  if (meaning.kind === "name") return meaning.name;
  // A rule or a validation may not speak of tables, nor of what a spill fills: it names their cells.
  const isCellsOnly = place.cell !== undefined;
  if (meaning.kind === "table" && !isCellsOnly) return tableFormula(meaning, column);
  const prefix = meaning.sheet === place.sheet ? "" : sheetPrefix(meaning.sheet);
  if (meaning.kind === "table") return prefix + absolute(areaOfTable(meaning, column));
  const whole =
    meaning.kind === "spill" && !isCellsOnly
      ? `${prefix}${absolute({ ...meaning.area, rows: 1, columns: 1 })}#`
      : `${prefix}${absolute(meaning.area)}`;
  if (first === undefined) return whole;
  return second === undefined ? `INDEX(${whole},0,${first})` : `INDEX(${whole},${first},${second})`;
}

function references(text: string): { reference: Reference | undefined; text: string }[] {
  return [...text.matchAll(symbolPattern)].map(([match, symbol, column, first, second]) => ({
    text: match,
    reference:
      symbol === undefined
        ? undefined
        : {
            symbol,
            column,
            first: first === undefined ? undefined : Number(first),
            second: second === undefined ? undefined : Number(second),
          },
  }));
}

/** A formula of the plan with every symbol in its place; texts in quotes stay as they are. */
export function inFormula(symbols: Symbols, formula: string, place: Place): string {
  const found = references(formula);
  let at = 0;
  return formula.replace(symbolPattern, () => {
    const { reference, text } = found[at++] as (typeof found)[number];
    return reference ? formulaOf(symbols, reference, place) : text;
  });
}

function columnAt(area: Area, column: number, row?: number): Area {
  if (column < 1 || column > area.columns || (row !== undefined && (row < 1 || row > area.rows)))
    throw new Error(`[${row ?? ""},${column}] lies outside ${areaAddress(area)}.`);
  const top = row === undefined ? area : { row: area.row + row - 1, rows: 1 };
  return { row: top.row, rows: top.rows, column: area.column + column - 1, columns: 1 };
}

/** The cells that one symbol names: "{log.cod}" → rows of that column. */
export function cellsOf(symbols: Symbols, text: string): CellsOf {
  const found = references(text);
  const reference = found[0]?.reference;
  if (!reference || found[0]?.text !== text)
    throw new Error(`"${text}" does not name cells of the plan. Write one symbol in braces.`);
  const meaning = meaningOf(symbols, reference.symbol);
  const { sheet } = meaning;
  if (meaning.kind === "table") return { sheet, area: areaOfTable(meaning, reference.column) };
  const { first, second } = reference;
  const area =
    first === undefined
      ? meaning.area
      : second === undefined
        ? columnAt(meaning.area, first)
        : columnAt(meaning.area, second, first);
  if (meaning.kind !== "spill") return { sheet, area };
  return { sheet, area, spillAt: { row: meaning.area.row, column: meaning.area.column } };
}

/** The same cells with the sheet's name and dollar signs, as lists and names write them. */
export const absoluteCells = ({ sheet, area }: CellsOf): string =>
  `${sheetPrefix(sheet)}${absolute(area)}`;
