import { Refusal } from "../model/refusal";
import { type Cell, errorCode } from "./cell";

/** What a cell shows. An error cell is the host's own error object. */
export type AnswerCell = number | string | boolean | CustomFunctions.Error;
export type Answer = AnswerCell[][];

/** An error that already stands in an input cell: it comes back as it is. */
export class ErrorInInput extends Error {
  constructor(readonly cell: Cell) {
    super(`An input cell holds ${errorCode(cell)}.`);
  }
}

/** Only these two codes can carry a message to the person at the sheet. */
const badInput = (message: string) =>
  new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, message);
const noAnswer = (message: string) =>
  new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, message);

/** The error cell for a refusal or for an error that stood in the input. A bug is thrown on. */
export function errorCell(problem: unknown): CustomFunctions.Error {
  if (problem instanceof Refusal) {
    return problem.kind === "no answer" ? noAnswer(problem.message) : badInput(problem.message);
  }
  if (problem instanceof ErrorInInput) {
    const code = errorCode(problem.cell) as CustomFunctions.ErrorCode;
    if (problem.cell instanceof CustomFunctions.Error) return problem.cell;
    return new CustomFunctions.Error(code);
  }
  throw problem;
}

/** A value of the model as a cell: never a NaN, never an infinity. */
export function answerCell(value: number | string | boolean | Refusal): AnswerCell {
  if (typeof value === "number" && !Number.isFinite(value)) return badInput(TOO_LARGE);
  return value instanceof Refusal ? errorCell(value) : value;
}

const TOO_LARGE =
  "The answer is too large or too small to be a number. Check the units of the arguments.";
