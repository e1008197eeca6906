import { type Answer, type AnswerCell, answerCell, errorCell } from "./answer";
import type { Argument, Values } from "./argument";
import { asCells, type Cell, type Cells, isBlank, isOmitted } from "./cell";
import { columnsOf, commonColumns, commonRows } from "./extent";
import { accepts, isQuantity, type Quantity, readNumber } from "./quantity";
import { settle } from "./settle";

/** A function as a host calls it: the cells of each argument, then the invocation. */
export type CellFunction = (...given: unknown[]) => Answer;

type Formula = (...values: unknown[]) => number;

/**
 * Lifts a formula of single numbers over ranges: element by element, a row and a column broadcast to a
 * grid, and a bad element spoils its own cell only. Arguments other than quantities (a unit, a shape) are
 * read once for the whole call.
 */
export function elementwise<const A extends readonly Argument<unknown>[]>(
  id: string,
  args: A,
  model: (...values: Values<A>) => number,
): CellFunction {
  const formula = model as Formula;
  const values = new Array<unknown>(args.length);
  return (...given) =>
    settle(id, args.length, given, () => {
      const value = single(args, given, formula, values);
      return value === undefined ? overRanges(args, given, formula, values) : [[value]];
    });
}

/** The plain call, one sound number for each argument, is answered here; any other gives undefined. */
function single(
  args: readonly Argument<unknown>[],
  given: readonly unknown[],
  formula: Formula,
  values: unknown[],
): number | undefined {
  for (let i = 0; i < args.length; i += 1) {
    const argument = args[i] as Argument<unknown>;
    if (!isQuantity(argument)) return undefined;
    const cells = given[i] as Cells | null | undefined;
    let cell: Cell = argument.fallback;
    if (cells !== null && cells !== undefined) {
      const row = cells.length === 1 ? cells[0] : undefined;
      if (row?.length !== 1 || !accepts(argument, row[0])) return undefined;
      cell = row[0];
    } else if (!argument.optional) return undefined;
    values[i] = cell;
  }
  const value = invoke(formula, values);
  return Number.isFinite(value) ? value : undefined;
}

interface VaryingArgument {
  readonly argument: Quantity;
  readonly name: string;
  readonly place: number;
  readonly cells: Cells;
  /** How far to go on in the range for each row and column of the answer: 0 repeats, 1 walks. */
  readonly down: number;
  readonly across: number;
}

function overRanges(
  args: readonly Argument<unknown>[],
  given: readonly unknown[],
  formula: Formula,
  values: unknown[],
): Answer {
  const varying: VaryingArgument[] = [];
  args.forEach((argument, place) => {
    const cells = asCells(given[place]);
    if (cells === null || !isQuantity(argument) || isOmitted(cells)) {
      values[place] = argument.read(cells);
    } else {
      const down = cells.length > 1 ? 1 : 0;
      const across = columnsOf(cells) > 1 ? 1 : 0;
      varying.push({ argument, name: argument.name, place, cells, down, across });
    }
  });
  const rows = commonRows(varying.filter(({ down }) => down === 1));
  const columns = commonColumns(varying.filter(({ across }) => across === 1));

  function element(row: number, column: number): AnswerCell {
    try {
      for (const { argument, place, cells, down, across } of varying) {
        const cell = (cells[row * down] as readonly Cell[])[column * across];
        values[place] = accepts(argument, cell) ? cell : readElement(argument, cell);
      }
      return answerCell(invoke(formula, values));
    } catch (problem) {
      return errorCell(problem);
    }
  }

  const answer = new Array<AnswerCell[]>(rows);
  for (let row = 0; row < rows; row += 1) {
    const line = new Array<AnswerCell>(columns);
    for (let column = 0; column < columns; column += 1) line[column] = element(row, column);
    answer[row] = line;
  }
  return answer;
}

/** A blank among the cells of an optional argument counts as left out. */
function readElement(argument: Quantity, cell: Cell): number | undefined {
  if (argument.optional && isBlank(cell)) return argument.fallback;
  return readNumber(argument, cell);
}

/** Calls without spreading where it can: a spread costs several times what such a formula does. */
function invoke(formula: Formula, v: readonly unknown[]): number {
  switch (v.length) {
    case 1:
      return formula(v[0]);
    case 2:
      return formula(v[0], v[1]);
    case 3:
      return formula(v[0], v[1], v[2]);
    case 4:
      return formula(v[0], v[1], v[2], v[3]);
    default:
      return formula(...v);
  }
}
