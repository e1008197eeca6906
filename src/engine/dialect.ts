/**
 * Where the grid's formula language differs from the spreadsheet's. Formulas go into the grid through
 * toGrid and come back through fromGrid; nobody else needs to know.
 *
 * - A sign directly before a text, an array, a name, TRUE or FALSE, or 0 is not understood: what stands
 *   behind it is put in brackets.
 * - A number with digits to spare, 0.50 or 1e0, is not equal to the same number without: it is written short.
 * - The mark of a spilled range, B4#, is unknown: it is written as the function behind it, ANCHORARRAY.
 */

import { bracketed, unbracketed } from "./signs";

// Text and what stands in square brackets are never touched. The quoted name of a sheet is found, too, so
// that no quote of it is taken for the start of something else; it is part of the reference behind it.
const quoted = /"(?:[^"]|"")*"|'(?:[^']|'')*'!?|\[(?:[^[\]]|\[[^[\]]*\])*\]/g;

/** Applies an edit to the parts of a formula that are neither text nor a column of a table. */
function outsideText(formula: string, edit: (part: string) => string): string {
  let result = "";
  let from = 0;
  for (const match of formula.matchAll(quoted)) {
    if (match[0].endsWith("'!")) continue;
    result += edit(formula.slice(from, match.index)) + match[0];
    from = match.index + match[0].length;
  }
  return result + edit(formula.slice(from));
}

const reference = String.raw`(?:(?:'(?:[^']|'')*'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?[A-Z]{1,3}\$?\d+`;
const spillMark = new RegExp(`(${reference})#`, "giu");
const spillFunction = new RegExp(String.raw`\bANCHORARRAY\((${reference})\)`, "giu");

const number =
  /'(?:[^']|'')*'!|(?<![\p{L}\p{N}_.$:])(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?![\p{L}\p{N}_.!:(])/giu;

/** Without "=" in, with "=" out. */
export function toGrid(formula: string): string {
  const edited = outsideText(bracketed(formula), (part) =>
    part
      .replace(spillMark, "ANCHORARRAY($1)")
      .replace(number, (found) => (found.endsWith("!") ? found : String(Number(found)))),
  );
  return `=${edited}`;
}

/** With "=" in, without "=" out. */
export function fromGrid(formula: string): string {
  const plain = unbracketed(formula.replace(/^=/, ""));
  return outsideText(plain, (part) => part.replace(spillFunction, "$1#"));
}

const plainReference =
  /^(?:(?:'(?:[^']|'')*'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/iu;

export const isPlainReference = (formula: string): boolean => plainReference.test(formula);

/** The grid puts a name's text in place of the name: a formula keeps its meaning only in brackets. */
export const nameToGrid = (formula: string): string =>
  isPlainReference(formula) ? formula : `=(${toGrid(formula).slice(1)})`;

export const nameFromGrid = (formula: string): string =>
  formula.startsWith("=(") && formula.endsWith(")")
    ? fromGrid(formula.slice(2, -1))
    : fromGrid(formula);
