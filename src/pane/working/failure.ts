import { asCells, errorCode } from "../../cells/cell";
import type { Call } from "../../cells/observer";

/** Why a cell shows an error, and what to do about it. */
export interface Failure {
  readonly code: string;
  readonly wrong: string;
  readonly mend: string;
}

/**
 * The failure of one cell of an answer; undefined where it holds a value. A host that follows errors from cell to
 * cell knows where one arose that an argument brought: its reason goes before the words of the call.
 */
export function failureOf(
  call: Call,
  row: number,
  column: number,
  reason?: string,
): Failure | undefined {
  const cell: unknown = Array.isArray(call.answer) ? call.answer[row]?.[column] : call.answer;
  const code = errorCode(cell);
  if (code === undefined) return undefined;
  const message = reason ?? (cell as { readonly message?: string }).message ?? "";
  if (message === "") {
    return {
      code,
      wrong: `A cell that this formula takes holds ${code}.`,
      mend: "Mend that cell first: this one follows.",
    };
  }
  return { code, ...inTwo(message) };
}

/** Messages say what is wrong, and then what to do. */
export function inTwo(message: string): { readonly wrong: string; readonly mend: string } {
  const parts = /^(.*?[.])\s+(?=[A-Z"])(.*)$/s.exec(message);
  return { wrong: parts?.[1] ?? message, mend: parts?.[2] ?? "" };
}

/** The arguments in which an error stands already that a cell of the answer takes, by their place. */
export function failedArguments(call: Call, row: number, column: number): readonly number[] {
  return call.arguments.flatMap((_, i) =>
    cellsTaken(call, i, row, column).some((cell) => errorCode(cell) !== undefined) ? [i] : [],
  );
}

/** The cells of an argument that one cell of the answer is computed from. */
export function cellsTaken(
  { by, arguments: all }: Call,
  place: number,
  row: number,
  column: number,
) {
  const cells = asCells(all[place]) ?? [];
  if (by === "whole") return cells.flat();
  const line = cells.length > 1 ? (cells[row] ?? []) : (cells[0] ?? []);
  return by === "row" || line.length === 1 ? line : line.slice(column, column + 1);
}

/** What an error means that no function of ours gave: the sheet gave it. */
export function sheetFailure(error: string): Failure {
  const known = SHEET_ERRORS[error];
  return {
    code: error,
    wrong: known?.[0] ?? `The cell shows ${error}.`,
    mend: known?.[1] ?? "Look at the cells that its formula takes.",
  };
}

const SHEET_ERRORS: Readonly<Record<string, readonly [wrong: string, mend: string]>> = {
  "#NAME?": [
    "The sheet does not know a name in this formula: it lost its link to the functions, or a name is misspelt.",
    "Repair the links below. If the error stays, check the spelling of the names in the formula.",
  ],
  "#SPILL!": [
    "The answer needs more cells than are free beside the formula.",
    "Clear the cells below and to the right of it, or move the formula.",
  ],
  "#BUSY!": [
    "The cell is still being computed.",
    "Wait a moment, then compute the workbook again.",
  ],
  "#REF!": [
    "The formula speaks of a cell that is no longer there.",
    "Undo the deletion, or give the formula a cell that exists.",
  ],
  "#CONNECT!": [
    "The sheet has lost its link to the functions.",
    "Repair the links below, or open the workbook again.",
  ],
};
