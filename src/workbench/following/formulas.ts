/** Formulas of rules that go on naming the same cells, as those in cells do by the grid. */
import { addressOf, parseArea, sheetPrefix } from "../../workbook/address";
import type { Area } from "../../workbook/book";
import { sheetOf } from "../../workbook/formula/regions";
import { type Token, tokensOf } from "../../workbook/formula/tokens";
import type { NameOf } from "./charts";
import { type Followed, type Follower, isGone } from "./follower";

/** The cells for which a formula was written; it is read relative to the first of them. */
export interface Home {
  readonly sheetId: string;
  readonly area: Area;
  readonly now: () => Followed;
}

/** Undefined once cells that it names are gone. */
export type FormulaNow = (nameOf: NameOf) => string | undefined;

export function followFormula(
  follower: Pick<Follower, "follow">,
  home: Home,
  formula: string,
  idOf: (sheet: string) => string,
): FormulaNow {
  const parts = partsOf(tokensOf(formula)).map((part) =>
    typeof part === "string" ? () => part : followReference(follower, home, part, idOf),
  );
  return (nameOf) => {
    const now = parts.map((part) => part(nameOf));
    return now.every((part) => part !== undefined) ? now.join("") : undefined;
  };
}

/** A cell, or from one cell to another, with the sheet before it. */
interface Reference {
  readonly prefix: string | undefined;
  readonly ends: readonly string[];
  /** What of an end is written: all of it, but for whole columns and rows. */
  readonly shown?: RegExp;
}

/** Whole columns and rows, by their first and last cell. */
function linesOf({ kind, text }: Token): Omit<Reference, "prefix"> | undefined {
  const [first = "", last = ""] = text.split(":");
  if (kind === "columns") return { ends: [`${first}1`, `${last}1048576`], shown: /^\$?[A-Z]+/ };
  if (kind === "rows") return { ends: [`A${first}`, `XFD${last}`], shown: /\$?\d+$/ };
  return undefined;
}

function partsOf(tokens: readonly Token[]): (string | Reference)[] {
  const parts: (string | Reference)[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    const prefix = token.kind === "sheet" ? token.text : undefined;
    const first = prefix === undefined ? token : tokens[at + 1];
    const lines = first && linesOf(first);
    if (lines) {
      if (prefix !== undefined) at++;
      parts.push({ prefix, ...lines });
      continue;
    }
    if (first?.kind !== "cell") {
      parts.push(token.text);
      continue;
    }
    if (prefix !== undefined) at++;
    const isRange = tokens[at + 1]?.text === ":" && tokens[at + 2]?.kind === "cell";
    const last = isRange ? [(tokens[at + 2] as Token).text] : [];
    if (isRange) at += 2;
    parts.push({ prefix, ends: [first.text, ...last] });
  }
  return parts;
}

function followReference(
  follower: Pick<Follower, "follow">,
  home: Home,
  { prefix, ends, shown }: Reference,
  idOf: (sheet: string) => string,
): FormulaNow {
  const sheetId = prefix === undefined ? home.sheetId : idOf(sheetOf(prefix));
  const area = parseArea(ends.join(":"));
  const cells = follower.follow(sheetId, area);
  const own = sheetId === home.sheetId;
  // What stands in the row or column of the cell itself stays with that cell.
  const down = own ? offset(ends, /[a-z]\d/i, area.row - home.area.row, home.area.rows) : undefined;
  const right = own
    ? offset(ends, /^[a-z]/i, area.column - home.area.column, home.area.columns)
    : undefined;
  return (nameOf) => {
    const [its, from] = [cells().area, home.now().area];
    const name = nameOf(cells().sheetId);
    const rows = down === undefined ? its : { row: from.row + down, rows: area.rows };
    const columns =
      right === undefined ? its : { column: from.column + right, columns: area.columns };
    const now = {
      row: rows.row,
      rows: rows.rows,
      column: columns.column,
      columns: columns.columns,
    };
    if (name === undefined || isGone({ sheetId, area: now })) return undefined;
    const corners = [
      [now.row, now.column],
      [now.row + now.rows - 1, now.column + now.columns - 1],
    ] as const;
    const texts = ends.map((end, index) => {
      const text = withMarks(end, ...(corners[index] as [number, number]));
      return shown ? (shown.exec(text)?.[0] ?? text) : text;
    });
    return (
      (cells().sheetId === home.now().sheetId && own ? "" : sheetPrefix(name)) + texts.join(":")
    );
  };
}

/** How far from the cell itself, where all ends are written relative to it and lie in its lines. */
function offset(ends: readonly string[], relative: RegExp, distance: number, size: number) {
  const inLines = distance >= 0 && distance < size;
  return inLines && ends.every((end) => relative.test(end)) ? distance : undefined;
}

/** The address with the dollar signs that it was written with. */
function withMarks(written: string, row: number, column: number): string {
  const [, columnMark = "", rowMark = ""] = /^(\$?)[a-z]+(\$?)/i.exec(written) ?? [];
  return addressOf(row, column).replace(
    /([A-Z]+)(\d+)/,
    `${columnMark.replace("$", "$$$$")}$1${rowMark.replace("$", "$$$$")}$2`,
  );
}
