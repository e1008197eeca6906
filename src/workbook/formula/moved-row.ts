import { sheetOf } from "./regions";
import { sheetRows, shiftedFormula } from "./shared";
import { type Token, tokensOf } from "./tokens";

/**
 * A formula (without "=") as it reads when its row is put so many rows further down, as a spreadsheet sorts:
 * what it reads of its own sheet keeps its distance from it, and what it reads of others stays.
 */
export function inMovedRow(formula: string, sheet: string, rows: number): string {
  const tokens = tokensOf(formula);
  return tokens
    .map(({ kind, text }, at) => {
      const named = sheetBefore(tokens, at);
      const moves = named === undefined || named.toLowerCase() === sheet.toLowerCase();
      if (!moves || (kind !== "cell" && kind !== "rows")) return text;
      return leaves(text, rows) ? "#REF!" : shiftedFormula(text)(rows, 0);
    })
    .join("");
}

/** The sheet that is named before a cell, or before the first one of a range. */
function sheetBefore(tokens: readonly Token[], at: number): string | undefined {
  const before = tokens[at - 1];
  if (before?.kind === "sheet") return sheetOf(before.text);
  return before?.text === ":" ? sheetBefore(tokens, at - 2) : undefined;
}

/** Whether a row that no dollar sign holds would be none of the sheet. */
const leaves = (text: string, by: number) =>
  [...text.matchAll(/(?<![$\d])\d+/g)].some(([row]) => {
    const now = Number(row) + by;
    return now < 1 || now > sheetRows;
  });
