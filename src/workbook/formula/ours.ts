import type { Book } from "../book";
import type { FunctionNames } from "./stored-form";
import { tokensOf } from "./tokens";

/** Names that hold one of our functions, or another such name; small letters. */
export function ourNames(book: Book, names: FunctionNames): ReadonlySet<string> {
  const found = new Set<string>();
  for (let before = -1; before < found.size; ) {
    before = found.size;
    for (const { name, formula } of book.definedNames)
      if (usesOurs(formula, names, found)) found.add(name.toLowerCase());
  }
  return found;
}

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
