import { columnIndex, parseAddress } from "../address";
import { hull } from "../areas";
import { type Area, type Book, cellAt, type Sheet } from "../book";
import { sheetColumns, sheetRows } from "./shared";
import { type Token, tokensOf } from "./tokens";

/** Cells of one sheet that a formula reads. */
export interface Region {
  readonly sheet: string;
  readonly area: Area;
}

const same = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

/** 'Mill log'! → Mill log. */
export const sheetOf = (token: string): string => {
  const name = token.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
};

/** The sheets that a prefix names: one, or from one to another (Jan:Mar!). */
function sheetsNamed(book: Book, prefix: string): readonly Sheet[] {
  const name = sheetOf(prefix);
  const one = book.sheets.filter((sheet) => same(sheet.name, name));
  if (one.length > 0 || !name.includes(":")) return one;
  const [first, last] = name
    .split(":")
    .map((end) => book.sheets.findIndex((s) => same(s.name, end)));
  if (first === undefined || last === undefined || first < 0 || last < 0) return [];
  return book.sheets.slice(Math.min(first, last), Math.max(first, last) + 1);
}

function lines({ kind, text }: Token): Area {
  const [first, last] = text.replaceAll("$", "").split(":") as [string, string];
  const ends =
    kind === "rows" ? [Number(first) - 1, Number(last) - 1] : [first, last].map(columnIndex);
  const [from, to] = [Math.min(...(ends as number[])), Math.max(...(ends as number[]))];
  return kind === "rows"
    ? { row: from, rows: to - from + 1, column: 0, columns: sheetColumns }
    : { row: 0, rows: sheetRows, column: from, columns: to - from + 1 };
}

/** Every cell that the formula names: by address, by name, by table, or as what another formula fills. */
export function regionsOf(formula: string, home: string, book: Book): Region[] {
  return regions(formula, home, book, new Set());
}

function regions(formula: string, home: string, book: Book, seen: Set<string>): Region[] {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const found: Region[] = [];
  const isMark = (at: number, text: string) =>
    tokens[at]?.kind === "mark" && tokens[at]?.text === text;
  tokens.forEach((token, at) => {
    const prefix = tokens[at - 1]?.kind === "sheet" ? tokens[at - 1]?.text : undefined;
    const sheets =
      prefix === undefined
        ? book.sheets.filter(({ name }) => same(name, home))
        : sheetsNamed(book, prefix);
    const add = (area: Area) => {
      for (const { name } of sheets) found.push({ sheet: name, area });
    };
    if (token.kind === "rows" || token.kind === "columns") add(lines(token));
    else if (token.kind === "word") found.push(...named(token.text, home, book, seen));
    else if (token.kind === "cell" && !isMark(at - 1, ":")) {
      const start = { ...parseAddress(token.text), rows: 1, columns: 1 };
      const end =
        isMark(at + 1, ":") && tokens[at + 2]?.kind === "cell" ? tokens[at + 2] : undefined;
      if (end) add(hull([start, { ...parseAddress(end.text), rows: 1, columns: 1 }]));
      else if (!isMark(at + 1, "#")) add(start);
      else
        for (const sheet of sheets) {
          const spill = cellAt(sheet, start.row, start.column)?.spill;
          found.push({ sheet: sheet.name, area: { ...start, ...spill } });
        }
    }
  });
  return found;
}

/** The cells behind a name or a table; a name that names itself is followed once. */
function named(word: string, home: string, book: Book, seen: Set<string>): Region[] {
  const table = book.tables.find(({ name }) => same(name, word));
  if (table) return [{ sheet: table.sheet, area: table.area }];
  const alike = book.definedNames.filter(({ name }) => same(name, word));
  const name =
    alike.find(({ sheet }) => sheet !== undefined && same(sheet, home)) ??
    alike.find(({ sheet }) => sheet === undefined);
  if (!name || seen.has(name.formula)) return [];
  seen.add(name.formula);
  return regions(name.formula, home, book, seen);
}
