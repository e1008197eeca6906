/**
 * Names that belong to one sheet. The grid has one list of names for all sheets, so what such a name
 * means is put in its place, and where it is not known, #NAME?.
 */
import { sheetPrefix } from "../workbook/address";
import type { DefinedName } from "../workbook/book";
import { sheetOf } from "../workbook/formula/regions";
import { joined, type Token, tokensOf } from "../workbook/formula/tokens";
import { isPlainReference } from "./dialect";

/** Names whose meaning goes through more names than this go in a circle. */
const DEEPEST = 20;

const lower = (text: string) => text.toLowerCase();

export class LocalNames {
  /** The names that some sheet has of its own, each with all that it means somewhere. */
  readonly #meanings = new Map<string, DefinedName[]>();

  constructor(definedNames: readonly DefinedName[]) {
    for (const { name, sheet } of definedNames)
      if (sheet !== undefined) this.#meanings.set(lower(name), []);
    for (const name of definedNames) this.#meanings.get(lower(name.name))?.push(name);
  }

  /** The formula as it reads on a sheet, without a name that belongs to one. */
  resolved(formula: string, sheet: string, depth = 0): string {
    if (this.#meanings.size === 0) return formula;
    const result: Token[] = [];
    for (const token of tokensOf(formula)) {
      const meanings = token.kind === "word" && this.#meanings.get(lower(token.text));
      if (!meanings) {
        result.push(token);
        continue;
      }
      const prefix = result.at(-1)?.kind === "sheet" ? (result.pop() as Token) : undefined;
      const home = prefix ? sheetOf(prefix.text) : sheet;
      const own = meanings.find((one) => one.sheet && lower(one.sheet) === lower(home));
      const meant = own ?? meanings.find((one) => one.sheet === undefined);
      const text = this.#text(meant, depth);
      result.push({ kind: "word", text: depth === 0 ? withoutSheet(text, sheet) : text });
    }
    return joined(result);
  }

  #text(meant: DefinedName | undefined, depth: number): string {
    if (!meant || depth > DEEPEST) return "#NAME?";
    const formula = this.resolved(meant.formula, meant.sheet ?? "", depth + 1);
    return isPlainReference(formula) ? formula : `(${formula})`;
  }
}

/** The formula as it reads on other sheets: with the sheet before the names that belong to this one. */
export function namesWithSheet(
  formula: string,
  home: string,
  definedNames: readonly DefinedName[],
): string {
  const isOwn = (text: string) =>
    definedNames.some(
      ({ name, sheet }) => lower(name) === lower(text) && lower(sheet ?? "") === lower(home),
    );
  const tokens = tokensOf(formula);
  const named = tokens.map((token, at) =>
    token.kind === "word" && tokens[at - 1]?.kind !== "sheet" && isOwn(token.text)
      ? { ...token, text: sheetPrefix(home) + token.text }
      : token,
  );
  return joined(named);
}

/** Cells of the formula's own sheet without the sheet: so the grid writes them when rows are inserted. */
const withoutSheet = (formula: string, home: string) =>
  joined(
    tokensOf(formula).filter(
      ({ kind, text }) => kind !== "sheet" || lower(sheetOf(text)) !== lower(home),
    ),
  );
