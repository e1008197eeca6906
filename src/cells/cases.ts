import { impossible } from "../model/refusal";
import { type Answer, type AnswerCell, answerCell, errorCell } from "./answer";
import type { Argument, Values } from "./argument";
import { asCells, type Cell, type Cells, isBlank } from "./cell";
import type { CellFunction } from "./elementwise";
import { columnsOf, commonRows } from "./extent";
import { equalLengths, refuseUnequal } from "./lengths";
import type { Told } from "./observer";
import { isQuantity, type Quantity, readNumber } from "./quantity";
import { settle } from "./settle";
import { givenLength, readVector, type Vector } from "./vector";

/**
 * Lifts a formula of vectors over cases: a block holds one case a row (a day, a sample), a column of a
 * single-number argument one case a cell, and everything else is shared. Without either there is one case,
 * and the answer lies the way the vectors do, or is a table with a row an item where `labels` are given;
 * else it has a row a case. A bad case spoils its own row only.
 */
export function cases<const A extends readonly Argument<unknown>[]>(
  id: string,
  args: A,
  model: (...values: Values<A>) => number | readonly number[],
  labels?: readonly string[],
): CellFunction {
  const formula = model as (...values: unknown[]) => number | readonly number[];
  const vectors = args.flatMap((argument, i) => (isVector(argument) ? [{ argument, i }] : []));

  function prepare(given: readonly unknown[]): Prepared {
    const ranges = args.map((argument, i) => ({
      argument,
      name: argument.name,
      cells: asCells(given[i]),
    }));
    const varying = ranges.flatMap((range, i) =>
      isManyCases(range) ? [{ ...range, i, read: reader(range) }] : [],
    );
    const count = varying.length === 0 ? undefined : commonRows(varying);
    const isShared = ranges.map((_, i) => !varying.some((one) => one.i === i));
    refuseUnequal(vectors, (i) => {
      const { name, cells } = ranges[i] as Range;
      return isShared[i] ? givenLength(name, cells) : undefined;
    });
    const shared = ranges.map(({ argument, cells }, i) =>
      isShared[i] ? argument.read(cells) : undefined,
    );
    equalLengths(vectors, shared);
    const lengthsVary = varying.some(({ argument }) => isVector(argument));
    return {
      count,
      upright: count === undefined && ranges.some(isColumn),
      values(row) {
        const values = [...shared];
        for (const { i, read } of varying) values[i] = read(row);
        if (lengthsVary) equalLengths(vectors, values);
        return values;
      },
    };
  }

  function compute(given: readonly unknown[]): Answer {
    const { count, upright, values } = prepare(given);

    function solve(row: number): readonly AnswerCell[] | CustomFunctions.Error {
      try {
        const result = formula(...values(row));
        return typeof result === "number" ? [answerCell(result)] : result.map(answerCell);
      } catch (problem) {
        return errorCell(problem);
      }
    }

    if (count === undefined) return oneCase(solve(0), upright, labels);
    return manyCases(Array.from({ length: count }, (_, row) => solve(row)));
  }

  const told: Told = {
    id,
    count: args.length,
    by: "row",
    values(given, row) {
      const { count, values } = prepare(given);
      return values(count === undefined ? 0 : row);
    },
  };
  return (...given) => settle(told, given, () => compute(given));
}

/** The arguments of a call, ready to be read case by case. */
interface Prepared {
  /** How many cases there are; undefined where nothing brings a case a row. */
  readonly count: number | undefined;
  /** Whether the answer of a single case is a column. */
  readonly upright: boolean;
  values(row: number): unknown[];
}

interface Range {
  readonly argument: Argument<unknown>;
  readonly name: string;
  readonly cells: Cells | null;
}

type Filled = Range & { readonly cells: Cells };

const isVector = (argument: Argument<unknown>): argument is Vector =>
  (argument as Partial<Vector>).kind === "vector";

/** Whether an argument brings a case a row: a block of a vector, or a column of a single number. */
function isManyCases(range: Range): range is Filled {
  const { argument, cells } = range;
  if (cells === null || cells.length < 2) {
    if (cells !== null && isQuantity(argument) && columnsOf(cells) > 1) refuseRow(argument.name);
    return false;
  }
  if (isVector(argument)) return argument.byCase && columnsOf(cells) > 1;
  if (!isQuantity(argument)) return false;
  if (columnsOf(cells) > 1) refuseRow(argument.name);
  return true;
}

export function refuseRow(name: string): never {
  impossible(`${name} is wider than one cell. Give one cell, or a column with one case a row.`);
}

const isColumn = ({ argument, cells }: Range) =>
  isVector(argument) && cells !== null && cells.length > 1 && columnsOf(cells) === 1;

/** How the value of an argument that brings a case a row is found. */
function reader({ argument, cells }: Filled): (row: number) => unknown {
  if (isVector(argument)) {
    return (row) => {
      const blank = argument.optional && (cells[row] as readonly Cell[]).every(isBlank);
      return blank ? undefined : readVector(argument, cells[row] as readonly Cell[]);
    };
  }
  const { optional, fallback } = argument as Quantity;
  return (row) => {
    const cell = cells[row]?.[0];
    return optional && isBlank(cell) ? fallback : readNumber(argument as Quantity, cell);
  };
}

function oneCase(
  solved: readonly AnswerCell[] | CustomFunctions.Error,
  upright: boolean,
  labels: readonly string[] | undefined,
): Answer {
  if (solved instanceof CustomFunctions.Error) return [[solved]];
  if (labels !== undefined) return solved.map((cell, i) => [labels[i] as string, cell]);
  return upright ? solved.map((cell) => [cell]) : [[...solved]];
}

/** A row a case; a case that failed shows its error across the row. */
export function manyCases(
  solved: readonly (readonly AnswerCell[] | CustomFunctions.Error)[],
): Answer {
  const columns = Math.max(
    1,
    ...new Set(solved.map((row) => (Array.isArray(row) ? row.length : 1))),
  );
  return solved.map((row) =>
    row instanceof CustomFunctions.Error ? new Array<AnswerCell>(columns).fill(row) : [...row],
  );
}
