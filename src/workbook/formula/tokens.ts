/**
 * Cuts a formula (without "=") into its words. Nothing is lost: the texts joined are the formula.
 * A cell is one token, so B2:C9 is three; whole columns (A:C) and rows (1:3) are one. A sheet's name
 * is a token of its own with its exclamation mark, and so is what stands in the brackets of a table.
 */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
}

export type TokenKind =
  | "text"
  | "error"
  | "number"
  | "sheet"
  | "cell"
  | "columns"
  | "rows"
  | "function"
  | "word"
  | "bracket"
  | "space"
  | "mark";

const patterns: readonly (readonly [TokenKind, RegExp])[] = [
  ["text", /"(?:[^"]|"")*(?:"|$)/y],
  ["error", /#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA)/iy],
  [
    "sheet",
    /(?:'(?:[^']|'')*'|(?:\[\d+\])?[\p{L}_][\p{L}\p{N}_.]*(?::[\p{L}_][\p{L}\p{N}_.]*)?|\[\d+\])!/uy,
  ],
  // A quote that names no sheet is nothing, but is taken as a whole: else each of its quotes is tried anew.
  ["mark", /'(?:[^']|'')*(?:'|$)/y],
  ["rows", /\$?\d{1,7}:\$?\d{1,7}(?![\w.])/y],
  ["columns", /\$?[a-z]{1,3}:\$?[a-z]{1,3}(?![\w.(!$])/iy],
  ["cell", /\$?[a-z]{1,3}\$?[1-9]\d{0,6}(?![\p{L}\p{N}_.(![])/iuy],
  ["number", /(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?/iy],
  ["function", /[\p{L}_\\][\p{L}\p{N}_.\\?]*(?=\()/uy],
  ["word", /[\p{L}_\\][\p{L}\p{N}_.\\?]*/uy],
  ["space", /\s+/y],
];

/** Where the bracket that opens at `start` closes; a quote takes the next character as it is. */
function bracketEnd(formula: string, start: number): number {
  let depth = 0;
  for (let at = start; at < formula.length; at++) {
    const character = formula[at];
    if (character === "'") at++;
    else if (character === "[") depth++;
    else if (character === "]" && --depth === 0) return at + 1;
  }
  return formula.length;
}

function tokenAt(formula: string, at: number): Token {
  for (const [kind, pattern] of patterns) {
    pattern.lastIndex = at;
    const found = pattern.exec(formula);
    if (found && found[0] !== "") return { kind, text: found[0] };
  }
  if (formula[at] === "[")
    return { kind: "bracket", text: formula.slice(at, bracketEnd(formula, at)) };
  return { kind: "mark", text: formula[at] as string };
}

export function tokensOf(formula: string): Token[] {
  const tokens: Token[] = [];
  for (let at = 0; at < formula.length; ) {
    const token = tokenAt(formula, at);
    tokens.push(token);
    at += token.text.length;
  }
  return tokens;
}

export const joined = (tokens: readonly Token[]): string =>
  tokens.map((token) => token.text).join("");

/** Index of the token that closes the parenthesis opened at `open`; the end where none does. */
export function closing(tokens: readonly Token[], open: number): number {
  let depth = 0;
  for (let at = open; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    if (token.kind !== "mark") continue;
    if (token.text === "(") depth++;
    else if (token.text === ")" && --depth === 0) return at;
  }
  return tokens.length;
}

/** The words that may be names, in small letters; a name of a LAMBDA stands where a function does. */
export const wordsOf = (formula: string): string[] =>
  tokensOf(formula)
    .filter(({ kind }) => kind === "word" || kind === "function")
    .map(({ text }) => text.toLowerCase());
