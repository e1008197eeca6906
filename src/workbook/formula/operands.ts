import { closing, joined, type Token, tokensOf } from "./tokens";

/** A cell, range or name in a formula, with the signs on both sides of it: A1:A3 in 2*A1:A3-1 has "*" and "-". */
export interface Operand {
  readonly before: string;
  readonly after: string;
  readonly text: string;
}

export function operandsOf(formula: string): Operand[] {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const found: Operand[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const end = operandEnd(tokens, at);
    if (end === at) continue;
    const before = tokens[at - 1]?.text ?? "";
    const after = tokens[end]?.text ?? "";
    found.push({ before, after, text: joined(tokens.slice(at, end)) });
    at = end - 1;
  }
  return found;
}

const named: ReadonlySet<string | undefined> = new Set(["cell", "columns", "rows", "word"]);

/** Behind the reference that begins at a token; the token itself where none does. */
function operandEnd(tokens: readonly Token[], start: number): number {
  const first = tokens[start]?.kind === "sheet" ? start + 1 : start;
  const kind = tokens[first]?.kind;
  if (!named.has(kind)) return start;
  const next = tokens[first + 1]?.text;
  if (kind === "cell" && next === ":" && tokens[first + 2]?.kind === "cell") return first + 3;
  return kind === "cell" && next === "#" ? first + 2 : first + 1;
}

/** Functions that take an error for what it is, and do not hand it on. */
const catching: ReadonlySet<string> = new Set([
  "IFERROR",
  "IFNA",
  "ISERROR",
  "ISERR",
  "ISNA",
  "ERROR.TYPE",
  "COUNT",
  "COUNTA",
  "COUNTBLANK",
  "COUNTIF",
  "COUNTIFS",
  "AGGREGATE",
  "ROW",
  "ROWS",
  "COLUMN",
  "COLUMNS",
]);

/** A formula without the calls in which an error may stand and do no harm. */
export function withoutCatching(formula: string): string {
  const tokens = tokensOf(formula);
  const kept: Token[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    if (token.kind === "function" && catching.has(token.text.toUpperCase()))
      at = closing(tokens, at + 1);
    else kept.push(token);
  }
  return joined(kept);
}
