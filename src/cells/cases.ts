import { impossible } from "../model/refusal";
import { type Answer, type AnswerCell, answerCell, errorCell } from "./answer";
import type { Argument, Values } from "./argument";
import { asCells, type Cell, type Cells, isBlank } from "./cell";
import type { CellFunction } from "./elementwise";
import { columnsOf, commonRows } from "./extent";
import type { Told } from "./observer";
import { isQuantity, type Quantity, readNumber } from "./quantity";
import { settle } from "./settle";
import { readVector, type Vector } from "./vector";

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

  function prepare(given: readonly unknown[]): Prepared {
    const ranges = args.map((argument, i) => ({
      argument,
      name: argument.name,
      cells: asCells(given[i]),
    }));
    const byCase = ranges.filter(isManyCases);
    const count = byCase.length === 0 ? undefined : commonRows(byCase);
    const readers = ranges.map((range) => reader(range, isManyCases(range)));
    const vectors = args.flatMap((argument, i) => (isVector(argument) ? [{ argument, i }] : []));
    return {
      count,
      upright: count === undefined && ranges.some(isColumn),
      values(row) {
        const values = readers.map((read) => read(row));
        spreadAndCompare(vectors, values);
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

function refuseRow(name: string): never {
  impossible(`${name} is wider than one cell. Give one cell, or a column with one case a row.`);
}

const isColumn = ({ argument, cells }: Range) =>
  isVector(argument) && cells !== null && cells.length > 1 && columnsOf(cells) === 1;

/** How the value of an argument is found for a case: read once where all cases share it. */
function reader({ argument, cells }: Range, many: boolean): (row: number) => unknown {
  if (!many || cells === null) {
    const shared = once(() => argument.read(cells));
    return () => shared();
  }
  if (isVector(argument)) {
    return (row) => {
      const blank = (cells[row] as readonly Cell[]).every(isBlank);
      return blank && argument.optional ? undefined : readVector(argument, cells[row] as Cell[]);
    };
  }
  return (row) => {
    const cell = cells[row]?.[0];
    const { optional, fallback } = argument as Quantity;
    if (optional && isBlank(cell)) return fallback;
    return readNumber(argument as Quantity, cell);
  };
}

/** Reads at the first use, so that a refusal belongs to the answer and not to the preparation. */
function once<T>(read: () => T): () => T {
  let value: { readonly is: T } | undefined;
  return () => {
    value ??= { is: read() };
    return value.is;
  };
}

/**
 * Vectors of one size must be equally long; where one number may stand for all, it is repeated.
 * Works in place on the values that were read.
 */
export function spreadAndCompare(
  vectors: readonly {
    readonly argument: Pick<Vector, "name" | "size" | "oneForAll">;
    readonly i: number;
  }[],
  values: unknown[],
): void {
  for (const { argument, i } of vectors) {
    const value = values[i] as readonly unknown[] | undefined;
    const leader = vectors.find(
      (other) =>
        other.argument.size === argument.size &&
        values[other.i] !== undefined &&
        !(other.argument.oneForAll && (values[other.i] as readonly unknown[]).length === 1),
    );
    if (value === undefined || leader === undefined || leader.i === i) continue;
    const length = (values[leader.i] as readonly unknown[]).length;
    if (value.length === length) continue;
    if (argument.oneForAll && value.length === 1) {
      values[i] = new Array<unknown>(length).fill(value[0]);
    } else {
      impossible(
        `${leader.argument.name} has ${length} values and ${argument.name} has ${value.length}. Give as many of both.`,
      );
    }
  }
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
function manyCases(solved: readonly (readonly AnswerCell[] | CustomFunctions.Error)[]): Answer {
  const columns = Math.max(
    1,
    ...new Set(solved.map((row) => (Array.isArray(row) ? row.length : 1))),
  );
  return solved.map((row) =>
    row instanceof CustomFunctions.Error ? new Array<AnswerCell>(columns).fill(row) : [...row],
  );
}
