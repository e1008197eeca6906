import type { Book } from "../book";
import { isRecent } from "./future-functions";
import type { FunctionNames } from "./stored-form";
import { tokensOf, wordsOf } from "./tokens";

/** Names that hold one of our functions, or another such name; small letters. */
export const ourNames = (book: Book, names: FunctionNames): ReadonlySet<string> =>
  namesHolding(book, (formula) => usesOurs(formula, names, noNames));

/** Names that hold a function that many spreadsheet programs lack, or another such name; small letters. */
export const recentNames = (book: Book): ReadonlySet<string> =>
  namesHolding(book, (formula) => usesRecent(formula, noNames));

function namesHolding(
  { definedNames }: Book,
  isFound: (formula: string) => boolean,
): ReadonlySet<string> {
  const readers = new Map<string, string[]>();
  const found = new Set<string>();
  for (const { name, formula } of definedNames) {
    const reader = name.toLowerCase();
    if (isFound(formula)) found.add(reader);
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

const noNames: ReadonlySet<string> = new Set();

/** Whether a formula has a function in it that many spreadsheet programs lack, or a name that stands for one. */
export const usesRecent = (formula: string, namesWithRecent: ReadonlySet<string>): boolean =>
  uses(formula, isRecent, namesWithRecent);

/** Whether a formula has one of our functions in it, or a name that stands for one. */
export const usesOurs = (
  formula: string,
  names: FunctionNames,
  namesWithOurs: ReadonlySet<string>,
): boolean => uses(formula, (name) => names.isOurs(name), namesWithOurs);

/** A name may stand for a function of its own, and is called then as one. */
const uses = (
  formula: string,
  isWanted: (name: string) => boolean,
  wantedNames: ReadonlySet<string>,
): boolean =>
  tokensOf(formula).some(
    ({ kind, text }) =>
      (kind === "function" && (isWanted(text) || wantedNames.has(text.toLowerCase()))) ||
      (kind === "word" && wantedNames.has(text.toLowerCase())),
  );
