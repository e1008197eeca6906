import type { CellFailure } from "../../engine/recalculation";
import type { Book } from "../../workbook/book";
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

/** What an error says that comes from the sheet and not from one of our functions. */
const sheetErrors: Readonly<Record<string, string>> = {
  "#SPILL!": "Cells that the answer would fill are not empty. Clear them or move the formula.",
  "#REF!": "The formula refers to cells that are gone.",
  "#NAME?":
    "The formula names something that the workbook does not have, or a name that stands for itself.",
  "#CYCLE!": "The formula refers to itself, through other cells or at once.",
  "#N/A":
    "A cell that the formula reads, or a native function in it, gives this error; or its answer ends before this cell of an array formula.",
};

function messageOf({ error, message, formula }: CellFailure, names: FunctionNames): string {
  if (message !== undefined) return message;
  const unknown = tokensOf(formula).find(
    ({ kind, text }) =>
      kind === "function" && names.isOurs(text) && names.storedName(text) === undefined,
  );
  if (unknown) return `${unknown.text} is not a function of this version.`;
  return (
    sheetErrors[error] ??
    "A cell that the formula reads, or a native function in it, gives this error."
  );
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
