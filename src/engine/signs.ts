/** Signs before what the grid's lexer does not take one before: those operands go in brackets. */
import { closing, joined, type Token, tokensOf } from "../workbook/formula/tokens";

const isSign = (token: Token | undefined) =>
  token?.kind === "mark" && (token.text === "-" || token.text === "+");

/** Whether a sign at this place is one of its operand, and does not add or subtract. */
function isPrefix(tokens: readonly Token[], at: number): boolean {
  const before = tokens.slice(0, at).findLast(({ kind }) => kind !== "space");
  return before === undefined || (before.kind === "mark" && /^[-+*/^&=<>(,;:]$/.test(before.text));
}

const isBoolean = (token: Token) => /^(?:TRUE|FALSE)$/i.test(token.text);

/** One past the operand that starts here, if the lexer wants it in brackets behind a sign. */
function operandEnd(tokens: readonly Token[], start: number, prefix: boolean): number | undefined {
  const token = tokens[start];
  if (!token) return undefined;
  if (token.kind === "word" && isBoolean(token)) return start + 1;
  if (!prefix) return undefined;
  if (token.kind === "text" || token.kind === "word") return isPlain(tokens, start);
  if (token.kind === "number") return Number(token.text) === 0 ? start + 1 : undefined;
  if (token.kind !== "mark" || token.text !== "{") return undefined;
  const end = tokens.findIndex(
    ({ kind, text }, at) => at > start && kind === "mark" && text === "}",
  );
  return end < 0 ? undefined : end + 1;
}

/** A word before a bracket is a table, and no name. */
const isPlain = (tokens: readonly Token[], at: number) =>
  tokens[at + 1]?.kind === "bracket" ? undefined : at + 1;

function skipSpace(tokens: readonly Token[], at: number): number {
  return tokens[at]?.kind === "space" ? at + 1 : at;
}

const open: Token = { kind: "mark", text: "(" };
const close: Token = { kind: "mark", text: ")" };

/** -rate → -(rate), as the grid understands it. */
export function bracketed(formula: string): string {
  if (!/[-+]/.test(formula)) return formula;
  const tokens = tokensOf(formula);
  const result: Token[] = [];
  let inArray = false;
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    result.push(token);
    if (token.kind === "mark" && (token.text === "{" || token.text === "}"))
      inArray = token.text === "{";
    if (inArray || !isSign(token)) continue;
    const start = skipSpace(tokens, at + 1);
    const end = operandEnd(tokens, start, isPrefix(tokens, at));
    if (end === undefined) continue;
    result.push(...tokens.slice(at + 1, start), open, ...tokens.slice(start, end), close);
    at = end - 1;
  }
  return joined(result);
}

/** -(rate) → -rate, as people write it. */
export function unbracketed(formula: string): string {
  if (!/[-+]\s*\(/.test(formula)) return formula;
  const tokens = tokensOf(formula);
  const result: Token[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    result.push(token);
    if (!isSign(token)) continue;
    const start = skipSpace(tokens, at + 1);
    if (tokens[start]?.text !== "(") continue;
    const end = closing(tokens, start);
    if (operandEnd(tokens, start + 1, isPrefix(tokens, at)) !== end) continue;
    result.push(...tokens.slice(at + 1, start), ...tokens.slice(start + 1, end));
    at = end;
  }
  return joined(result);
}
