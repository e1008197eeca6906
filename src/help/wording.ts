import type { ArgumentReference, FunctionReference } from "./reference";

/** How a function is written: WETEND.DOSE.PUMP(dose, throughput, strength, [density]). */
export function signature({ name, arguments: args }: FunctionReference): string {
  const words = args.map((argument) => (argument.optional ? `[${argument.name}]` : argument.name));
  return `${name}(${words.join(", ")})`;
}

/** A description without the unit in brackets, for places where the unit has a column of its own. */
export function withoutUnit({ description, unit }: ArgumentReference): string {
  return description.replace(`[${unit}]`, "").replace(/\s+([;.,])/g, "$1");
}

/** A word of a formula inside a text: the name of an argument, as a rule. */
export interface Code {
  readonly code: string;
}

/** A text in pieces: words, words of formulas (which stand in backticks), and the functions that it names. */
export function splitMentions(
  text: string,
  functions: readonly FunctionReference[],
): readonly (string | Code | FunctionReference)[] {
  const pieces: (string | Code | FunctionReference)[] = [];
  let done = 0;
  for (const found of text.matchAll(/(?:[A-Z][A-Z0-9_.]*\.)?([A-Z]+\.[A-Z]+)|`([^`]+)`/g)) {
    const [, name, code] = found;
    const mentioned = code !== undefined ? { code } : functions.find(({ id }) => id === name);
    if (mentioned === undefined) continue;
    if (found.index > done) pieces.push(text.slice(done, found.index));
    pieces.push(mentioned);
    done = found.index + found[0].length;
  }
  if (done < text.length) pieces.push(text.slice(done));
  return pieces;
}

/** The other functions that the words about this one name. */
export function mentionedBy(
  one: FunctionReference,
  functions: readonly FunctionReference[],
): readonly FunctionReference[] {
  const texts = [one.description, one.returns, one.range, one.source].concat(
    one.arguments.map(({ description }) => description),
  );
  const named = splitMentions(texts.join("\n"), functions);
  return functions.filter((other) => other.id !== one.id && named.includes(other));
}

/** The rows that a documented answer prints: `{1,"two";3,4}`, or a single value. */
export function printedRows(answer: string): readonly (readonly string[])[] {
  const inside = /^\{(.*)\}$/s.exec(answer)?.[1];
  if (inside === undefined) return [[withoutQuotes(answer)]];
  const rows: string[][] = [[]];
  for (const [, cell = "", separator] of inside.matchAll(/\s*("(?:[^"]|"")*"|[^,;]+)([,;]|$)/g)) {
    rows.at(-1)?.push(withoutQuotes(cell.trim()));
    if (separator === ";") rows.push([]);
  }
  return rows;
}

function withoutQuotes(text: string): string {
  return /^".*"$/s.test(text) ? text.slice(1, -1).replaceAll('""', '"') : text;
}

/** What a function is, in one sentence. */
export const firstSentence = (text: string) => /^.*?[.](?=\s+[A-Z]|$)/s.exec(text)?.[0] ?? text;
