import { FAMILIES } from "../../help/families";
import type { FunctionReference } from "../../help/reference";
import { search } from "../parts/search";

/** The functions that answer a search: by name, words of the trade, what they say, units, family, arguments. */
export function findFunctions(
  query: string,
  functions: readonly FunctionReference[],
): readonly FunctionReference[] {
  return search(query, functions, (one) => [
    one.name,
    one.words.join(" "),
    one.description,
    FAMILIES.find(({ id }) => id === one.family)?.title ?? "",
    one.returns,
    one.arguments.map(({ name, unit }) => `${name} ${unit}`).join(" "),
  ]);
}
