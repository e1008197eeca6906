/** The formula of a cell of the grid as a person wrote it: with its names of one sheet and of tables. */
import { fromGrid, toGrid } from "../../engine/dialect";
import type { ReadCell } from "../../engine/read-cells";
import type { SpellOut } from "../../engine/spelled-out";
import type { Place } from "../../engine/structured";
import { joined, type Token, tokensOf } from "../../workbook/formula/tokens";
import type { Carried } from "./grid-book";

/** As it was written, as long as its words still mean what the grid computes with. */
export function writtenFormula(
  { formula, data }: ReadCell,
  spellOut: SpellOut,
  place: Place,
): string | undefined {
  const { formula: written } = (data?.custom ?? {}) as Carried;
  if (formula === undefined || written === undefined) return formula;
  const inGrid = fromGrid(toGrid(spellOut(written, place)));
  return inGrid === formula ? written : (withWords(written, formula, spellOut, place) ?? formula);
}

const references: ReadonlySet<Token["kind"]> = new Set(["sheet", "cell", "columns", "rows"]);
const isSpace = ({ kind }: Token) => kind === "space";

/**
 * The formula of the grid, whose plain references may have moved since it was written, with the words of the
 * written one; undefined where something else differs, or a word has come to mean other cells.
 */
function withWords(
  written: string,
  formula: string,
  spellOut: SpellOut,
  place: Place,
): string | undefined {
  const now = tokensOf(formula).filter((token) => !isSpace(token));
  let at = 0;
  let result = "";
  for (const piece of pieces(tokensOf(written))) {
    const meaning = spellOut(piece.text, place);
    if (isSpace(piece)) result += piece.text;
    else if (meaning !== piece.text) {
      const meant = tokensOf(fromGrid(toGrid(meaning))).filter((token) => !isSpace(token));
      if (joined(meant) !== joined(now.slice(at, at + meant.length))) return undefined;
      result += piece.text;
      at += meant.length;
    } else {
      const token = now[at++];
      if (token?.kind !== piece.kind) return undefined;
      if (references.has(piece.kind)) result += token.text;
      else if (isSame(token, piece)) result += piece.text;
      else return undefined;
    }
  }
  return at === now.length ? result : undefined;
}

const isSame = (one: Token, other: Token) =>
  one.kind === "number"
    ? Number(one.text) === Number(other.text)
    : one.text.toLowerCase() === other.text.toLowerCase();

/** The tokens, with each name and its sheet, and each table and what of it is meant, in one piece. */
function pieces(tokens: readonly Token[]): Token[] {
  const result: Token[] = [];
  for (const token of tokens) {
    const before = result.at(-1);
    const belongs =
      (token.kind === "word" && before?.kind === "sheet") ||
      (token.kind === "bracket" && before?.kind === "word");
    if (belongs) result.pop();
    result.push(belongs && before ? { kind: "word", text: before.text + token.text } : token);
  }
  return result;
}
