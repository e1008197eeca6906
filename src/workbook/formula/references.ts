/** Cells that a formula names, and where in it they are named. */
import { type Token, tokensOf } from "./tokens";

/** A cell, or from one cell to another, with the sheet before it. */
export interface Reference {
  readonly prefix: string | undefined;
  readonly ends: readonly string[];
  /** Whole columns and rows: by their first and last cell, of which is written what they are. */
  readonly lines?: "columns" | "rows";
}

const shown = { columns: /^\$?[A-Z]+/i, rows: /\$?\d+$/ };

function linesOf({ kind, text }: Token): Omit<Reference, "prefix"> | undefined {
  const [first = "", last = ""] = text.split(":");
  if (kind === "columns") return { ends: [`${first}1`, `${last}1048576`], lines: kind };
  if (kind === "rows") return { ends: [`A${first}`, `XFD${last}`], lines: kind };
  return undefined;
}

/** The formula cut up: what it names, and the texts between. */
export function referencesIn(formula: string): (string | Reference)[] {
  const tokens = tokensOf(formula);
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

export const writtenReference = ({ prefix = "", ends, lines }: Reference): string =>
  prefix + ends.map((end) => (lines ? (shown[lines].exec(end)?.[0] ?? end) : end)).join(":");

/** What the formula names, one after the other. */
export const referencesOf = (formula: string): string[] =>
  referencesIn(formula).flatMap((part) =>
    typeof part === "string" ? [] : [writtenReference(part)],
  );

/** The formula with other references in place of its own. */
export function withReferences(formula: string, references: readonly string[]): string {
  let at = 0;
  return referencesIn(formula)
    .map((part) => (typeof part === "string" ? part : (references[at++] ?? writtenReference(part))))
    .join("");
}
