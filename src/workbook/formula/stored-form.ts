import { NAMESPACE } from "../../help/reference";
import { withFuturePrefix, withoutFuturePrefix } from "./future-functions";
import { closing, joined, type Token, tokensOf } from "./tokens";

/** Translates names of our functions between a formula as people see it and as a file stores it. */
export interface FunctionNames {
  /** WETEND.DOSE.TARGET for _xldudf_WETEND_DOSE_TARGET; undefined for a function that is not ours. */
  shownName(stored: string): string | undefined;
  storedName(shown: string): string | undefined;
  /** Whether a function, in either form, is one of our namespace, known to this version or not. */
  isOurs(name: string): boolean;
}

const customPrefix = "_xldudf_";

/**
 * The names by the ids of the functions' metadata ("DOSE.TARGET"), in the namespace that runs.
 * A file stores a custom function with its dots turned into underscores, so two ids that differ
 * only there could not be told apart when the file is read again.
 */
export function functionNames(ids: Iterable<string>, namespace = NAMESPACE): FunctionNames {
  const byStored = new Map<string, string>();
  const byShown = new Map<string, string>();
  for (const id of ids) {
    const shown = `${namespace}.${id}`.toUpperCase();
    const stored = customPrefix + shown.replaceAll(".", "_");
    const other = byStored.get(stored.toUpperCase());
    if (other !== undefined)
      throw new Error(
        `The functions ${other} and ${shown} would have one name in a file: ${stored}.`,
      );
    byStored.set(stored.toUpperCase(), shown);
    byShown.set(shown, stored);
  }
  const ourPrefixes = [`${namespace}.`, `${customPrefix}${namespace}_`].map((prefix) =>
    prefix.toUpperCase(),
  );
  return {
    shownName: (stored) => byStored.get(stored.toUpperCase()),
    storedName: (shown) => byShown.get(shown.toUpperCase()),
    isOurs: (name) => ourPrefixes.some((prefix) => name.toUpperCase().startsWith(prefix)),
  };
}

/** The stored form of `B5#`, which is ANCHORARRAY(B5), turned into what people see. */
function withSpillMarks(tokens: readonly Token[]): Token[] {
  const result: Token[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] as Token;
    if (
      token.kind !== "function" ||
      withoutFuturePrefix(token.text).toUpperCase() !== "ANCHORARRAY"
    ) {
      result.push(token);
      continue;
    }
    const end = closing(tokens, at + 1);
    result.push(...tokens.slice(at + 2, end), { kind: "mark", text: "#" });
    at = end;
  }
  return result;
}

/** A formula as a file stores it → as people see it: Book.Cell.formula. */
export function shownFormula(stored: string, names: FunctionNames): string {
  const tokens = withSpillMarks(tokensOf(stored)).map((token): Token => {
    if (token.kind === "word") return { ...token, text: token.text.replace(/^_xlpm\./i, "") };
    if (token.kind !== "function") return token;
    const text = names.shownName(token.text) ?? withoutFuturePrefix(token.text);
    return { ...token, text: text.replace(/^_xlpm\./i, "") };
  });
  return joined(tokens);
}

/** B5# and Log!B5# and doses# → ANCHORARRAY(…). */
function withAnchors(tokens: readonly Token[]): Token[] {
  const result: Token[] = [];
  for (const token of tokens) {
    const last = result.at(-1);
    const isSpill = token.kind === "mark" && token.text === "#";
    if (!isSpill || !last || (last.kind !== "cell" && last.kind !== "word")) {
      result.push(token);
      continue;
    }
    const start = result.length - (result.at(-2)?.kind === "sheet" ? 2 : 1);
    const reference = result.splice(start);
    result.push({ kind: "function", text: "_xlfn.ANCHORARRAY" }, { kind: "mark", text: "(" });
    result.push(...reference, { kind: "mark", text: ")" });
  }
  return result;
}

/** Where the arguments of the call whose parenthesis opens at `open` start and end. */
function argumentsOf(tokens: readonly Token[], open: number): [number, number][] {
  const end = closing(tokens, open);
  const spans: [number, number][] = [];
  let depth = 0;
  let start = open + 1;
  for (let at = open + 1; at <= end; at++) {
    const text = tokens[at]?.kind === "mark" ? tokens[at]?.text : undefined;
    if (text === "(" || text === "{") depth++;
    else if (at < end && (text === ")" || text === "}")) depth--;
    if (at === end || (text === "," && depth === 0)) {
      spans.push([start, at]);
      start = at + 1;
    }
  }
  return spans;
}

/** Names that LET and LAMBDA introduce are stored with _xlpm. wherever they are used inside the call. */
function withParameters(tokens: readonly Token[]): Token[] {
  const result = [...tokens];
  tokens.forEach((token, at) => {
    const name = token.kind === "function" ? token.text.toUpperCase() : "";
    if (name !== "LET" && name !== "LAMBDA") return;
    const spans = argumentsOf(tokens, at + 1);
    const introduced = spans
      .slice(0, -1)
      .filter((_, index) => name === "LAMBDA" || index % 2 === 0)
      .map(([start, end]) => tokens.slice(start, end).filter(({ kind }) => kind !== "space"))
      .filter((words) => words.length === 1 && (words[0] as Token).kind === "word")
      .map((words) => (words[0] as Token).text.toLowerCase());
    const parameters = new Set(introduced);
    const end = closing(tokens, at + 1);
    for (let inside = at + 1; inside < end; inside++) {
      const word = result[inside] as Token;
      if (word.kind !== "word" && word.kind !== "function") continue;
      if (parameters.has(word.text.toLowerCase()))
        result[inside] = { ...word, text: `_xlpm.${word.text}` };
    }
  });
  return result;
}

/** A formula as people see it → as a file stores it. */
export function storedFormula(shown: string, names: FunctionNames): string {
  const tokens = withParameters(withAnchors(tokensOf(shown))).map((token): Token => {
    if (token.kind !== "function" || token.text.startsWith("_xl")) return token;
    return { ...token, text: names.storedName(token.text) ?? withFuturePrefix(token.text) };
  });
  return joined(tokens);
}
