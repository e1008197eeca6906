import { addressOf, parseAddress } from "../address";
import { type Book, cellAt, type Extent } from "../book";
import { sheetOf } from "./regions";
import { joined, type Token, tokensOf } from "./tokens";

/** How far the formula of a cell reaches, where its mark is to give way to a range. */
export type SpillReach = (sheet: string, row: number, column: number) => Extent | undefined;

/** $E$4 and four rows → $E$4:$E$7. */
function range(anchor: string, { rows, columns }: Extent): string {
  if (rows === 1 && columns === 1) return anchor;
  const { row, column } = parseAddress(anchor);
  const [, columnSign, rowSign] = /^(\$?)[A-Za-z]+(\$?)/.exec(anchor) as unknown as string[];
  const last = /^([A-Z]+)(\d+)$/.exec(addressOf(row + rows - 1, column + columns - 1));
  const [, letters, digits] = last as unknown as string[];
  return `${anchor}:${columnSign}${letters}${rowSign}${digits}`;
}

/** B4# turned into the cells that it stands for, for those formulas that are about to lose their own. */
export function withoutSpillMarks(formula: string, home: string, reach: SpillReach): string {
  if (!formula.includes("#")) return formula;
  const result: Token[] = [];
  for (const token of tokensOf(formula)) {
    const anchor = result.at(-1);
    if (token.kind === "mark" && token.text === "#" && anchor?.kind === "cell") {
      const prefix = result.at(-2);
      const sheet = prefix?.kind === "sheet" ? sheetOf(prefix.text) : home;
      const { row, column } = parseAddress(anchor.text);
      const extent = reach(sheet, row, column);
      if (extent) {
        result[result.length - 1] = { kind: "cell", text: range(anchor.text, extent) };
        continue;
      }
    }
    result.push(token);
  }
  return joined(result);
}

/** The reach of the cells of a book, of those alone that are asked for. */
export function reachIn(
  book: Book,
  wanted: (sheet: string, row: number, column: number) => boolean,
) {
  const sheets = new Map(book.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
  const reach: SpillReach = (name, row, column) => {
    const sheet = sheets.get(name.toLowerCase());
    const spill = sheet && cellAt(sheet, row, column)?.spill;
    return sheet && spill && wanted(sheet.name, row, column) ? spill : undefined;
  };
  return reach;
}
