import { impossible, type Refusal } from "../model/refusal";
import { type Answer, type AnswerCell, answerCell } from "./answer";
import type { Argument, Values } from "./argument";
import { asCells, type Cell, type Cells, isBlank, isOmitted } from "./cell";
import type { CellFunction } from "./elementwise";
import { equalLengths, refuseLengths, refuseUnequal } from "./lengths";
import type { Told } from "./observer";
import { settle } from "./settle";
import { givenLength, type Vector } from "./vector";

/** A value of a table: a refusal stands as the error of its own cell. */
export type TableCell = number | string | boolean | Refusal;

/**
 * A function that takes its arguments as a whole and answers a table, a column or a single value.
 * The rows that `model` gives are the rows of the answer.
 */
export function whole<const A extends readonly Argument<unknown>[]>(
  id: string,
  args: A,
  model: (...values: Values<A>) => readonly (readonly TableCell[])[],
): CellFunction {
  const formula = model as (...values: unknown[]) => readonly (readonly TableCell[])[];
  const read = wholeReader(args);

  function compute(given: readonly unknown[]): Answer {
    return formula(...read(given)).map((row) => row.map((cell): AnswerCell => answerCell(cell)));
  }

  const told: Told = { id, count: args.length, by: "whole", values: read };
  return (...given) => settle(told, given, () => compute(given));
}

/** Reads arguments as a whole: pairs without their blanks, vectors of one size equally long. */
export function wholeReader(
  args: readonly Argument<unknown>[],
): (given: readonly unknown[]) => unknown[] {
  const sized = args.flatMap((argument, i) => (isSized(argument) ? [{ argument, i }] : []));
  return (given) => {
    const cells = dropBlankPairs(
      args,
      args.map((_, i) => asCells(given[i])),
    );
    refuseUnequal(sized, (i) => {
      return givenLength((args[i] as Argument<unknown>).name, cells[i] ?? null);
    });
    const values = args.map((argument, i) => argument.read(cells[i] ?? null));
    equalLengths(sized, values);
    return values;
  };
}

type Sized = Pick<Vector, "name" | "size" | "oneForAll" | "paired">;

function isSized(argument: Argument<unknown>): argument is Argument<unknown> & Sized {
  return "size" in argument;
}

/**
 * Data that belong together (a dose and its strength): a place where every one is blank is dropped, and one
 * where only some are is refused, since half a pair is a slip of the pen.
 */
function dropBlankPairs(
  args: readonly Argument<unknown>[],
  given: readonly (Cells | null)[],
): readonly (Cells | null)[] {
  const pairs = args.flatMap((argument, i) => {
    const cells = given[i] ?? null;
    if (!isSized(argument) || !argument.paired || cells === null || isOmitted(cells)) return [];
    return [{ name: argument.name, i, cells: flat(argument.name, cells) }];
  });
  const first = pairs[0];
  if (first === undefined || pairs.length < 2) return given;
  for (const { name, cells } of pairs) {
    if (cells.length !== first.cells.length) {
      refuseLengths("cell", [first.name, first.cells.length], [name, cells.length]);
    }
  }
  const kept: number[] = [];
  for (let place = 0; place < first.cells.length; place += 1) {
    const blank = pairs.find(({ cells }) => isBlank(cells[place]));
    const filled = pairs.find(({ cells }) => !isBlank(cells[place]));
    if (filled === undefined) continue;
    if (blank !== undefined) {
      impossible(
        `${blank.name} (${place + 1} of ${first.cells.length}) is blank and ${filled.name} is not. Fill both, or clear both.`,
      );
    }
    kept.push(place);
  }
  const result = [...given];
  for (const { i, cells } of pairs) result[i] = [kept.map((place) => cells[place])];
  return result;
}

function flat(name: string, cells: Cells): readonly Cell[] {
  if (cells.length === 1) return cells[0] as readonly Cell[];
  if (cells[0]?.length !== 1) {
    impossible(
      `${name} is a block of ${cells.length} × ${cells[0]?.length ?? 0} cells. Give one row or one column.`,
    );
  }
  return cells.map((row) => row[0]);
}
