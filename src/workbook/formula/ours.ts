import type { Book } from "../book";
import { isRecent } from "./future-functions";
import type { FunctionNames } from "./stored-form";
import { tokensOf, wordsOf } from "./tokens";

/** Names that hold one of our functions, or another such name; small letters. */
export function ourNames({ definedNames }: Book, names: FunctionNames): ReadonlySet<string> {
  const readers = new Map<string, string[]>();
  const found = new Set<string>();
  for (const { name, formula } of definedNames) {
    const reader = name.toLowerCase();
    if (usesOurs(formula, names, noNames)) found.add(reader);
    for (const word of wordsOf(formula)) {
      const known = readers.get(word);
      if (known) known.push(reader);
      else readers.set(word, [reader]);
    }
  }
  // A set that grows while it is walked hands out what was added, too.
  for (const name of found) for (const reader of readers.get(name) ?? []) found.add(reader);
  return found;
}

/** Whether a formula has a function in it that many spreadsheet programs lack. */
export const usesRecent = (formula: string): boolean =>
  tokensOf(formula).some(({ kind, text }) => kind === "function" && isRecent(text));

const noNames: ReadonlySet<string> = new Set();

/** Whether a formula has one of our functions in it, or a name that stands for one. */
export function usesOurs(
  formula: string,
  names: FunctionNames,
  namesWithOurs: ReadonlySet<string>,
): boolean {
  return tokensOf(formula).some(
    ({ kind, text }) =>
      (kind === "function" && (names.isOurs(text) || namesWithOurs.has(text.toLowerCase()))) ||
      (kind === "word" && namesWithOurs.has(text.toLowerCase())),
  );
}
