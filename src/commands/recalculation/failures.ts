import type { CellFailure } from "../../engine/recalculation";
import type { Book } from "../../workbook/book";
import { errorWords } from "../../workbook/formula/error-words";
import { ourNames, usesOurs } from "../../workbook/formula/ours";
import type { FunctionNames } from "../../workbook/formula/stored-form";
import { tokensOf } from "../../workbook/formula/tokens";

export interface Failure {
  readonly sheet: string;
  readonly address: string;
  readonly formula: string;
  readonly error: string;
  readonly message: string;
}

function messageOf({ error, message, formula }: CellFailure, names: FunctionNames): string {
  if (message !== undefined) return message;
  const unknown = tokensOf(formula).find(
    ({ kind, text }) =>
      kind === "function" && names.isOurs(text) && names.storedName(text) === undefined,
  );
  if (unknown) return `${unknown.text} is not a function of this version.`;
  return errorWords(error);
}

/** Of all failures those of our formulas, each with a sentence; `entered` says what stands in the cell. */
export function failuresOf(
  failures: readonly CellFailure[],
  book: Book,
  names: FunctionNames,
  entered: ReadonlyMap<string, string>,
): Failure[] {
  const namesWithOurs = ourNames(book, names);
  return failures
    .filter(({ formula }) => usesOurs(formula, names, namesWithOurs))
    .map((failure) => {
      const { sheet, address, error } = failure;
      const formula = entered.get(failure.formula) ?? failure.formula;
      return { sheet, address, formula, error, message: messageOf(failure, names) };
    });
}
