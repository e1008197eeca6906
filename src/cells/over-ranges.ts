import { type Answer, type AnswerCell, answerCell, errorCell } from "./answer";
import type { Argument } from "./argument";
import { asCells, type Cell, type Cells, isBlank, isOmitted } from "./cell";
import { columnsOf, commonColumns, commonRows } from "./extent";
import { attempt, type Formula, invoke, isNoValue, NO_VALUE } from "./invoke";
import { accepts, isQuantity, type Quantity, readNumber } from "./quantity";

/** An argument that differs from cell to cell of the answer. */
interface Varying {
  readonly quantity: Quantity;
  readonly name: string;
  readonly place: number;
  readonly cells: Cells;
  /** How far to go on in the range for each row and column of the answer: 0 repeats, 1 walks. */
  readonly down: number;
  readonly across: number;
}

/** The formula for every cell of the answer that the ranges span. */
export function overRanges(
  args: readonly Argument<unknown>[],
  given: readonly unknown[],
  formula: Formula,
): Answer {
  const values: unknown[] = [];
  const varying: Varying[] = [];
  args.forEach((argument, place) => {
    const cells = asCells(given[place]);
    if (cells === null || !isQuantity(argument) || isOmitted(cells)) {
      values[place] = argument.read(cells);
      return;
    }
    const down = cells.length > 1 ? 1 : 0;
    const across = columnsOf(cells) > 1 ? 1 : 0;
    values[place] = 0.5;
    varying.push({ quantity: argument, name: argument.name, place, cells, down, across });
  });
  const rows = commonRows(varying.filter(({ down }) => down === 1));
  const columns = commonColumns(varying.filter(({ across }) => across === 1));

  // A column at a time: reading a whole column at once and then computing it is what makes ten thousand
  // rows cheap. Only where that gives no number is a cell looked at closely.
  const computed = Array.from({ length: columns }, (_, column) =>
    computeColumn(formula, values, varying, column, rows),
  );
  const answer: AnswerCell[][] = [];
  for (let row = 0; row < rows; row += 1) answer.push(lineOf(computed, row));
  computed.forEach((column, c) => {
    for (let row = 0; row < rows; row += 1) {
      if (!isNoValue(column[row] as number)) continue;
      (answer[row] as AnswerCell[])[c] = closeLook(varying, formula, values, row, c);
    }
  });
  return answer;
}

/** One column of the answer; NaN where a cell needs a closer look. */
function computeColumn(
  formula: Formula,
  values: unknown[],
  varying: readonly Varying[],
  column: number,
  rows: number,
): Float64Array {
  const places = varying.map(({ place }) => place);
  const numbers = varying.map((one) => readColumn(one, column, rows));
  const computed = new Float64Array(rows);
  for (let row = 0; row < rows; row += 1) {
    let readable = true;
    for (let i = 0; i < places.length; i += 1) {
      const number = (numbers[i] as Float64Array)[row] as number;
      values[places[i] as number] = number;
      // Not left to the formula: one that does without the argument would answer over a bad cell.
      if (isNoValue(number)) readable = false;
    }
    computed[row] = readable ? attempt(formula, values) : NO_VALUE;
  }
  return computed;
}

/** The plain numbers that a column of the answer is computed from; NaN where a cell holds none. */
function readColumn({ quantity, cells, down, across }: Varying, column: number, rows: number) {
  const numbers = new Float64Array(rows);
  const place = column * across;
  for (let row = 0; row < rows; row += 1) {
    const cell = (cells[row * down] as readonly Cell[])[place];
    numbers[row] = accepts(quantity, cell) ? cell : NO_VALUE;
  }
  return numbers;
}

function lineOf(computed: readonly Float64Array[], row: number): AnswerCell[] {
  if (computed.length === 1) return [(computed[0] as Float64Array)[row] as number];
  return computed.map((column) => column[row] as number);
}

/** What a cell of the answer shows that the plain way did not settle: a default, or an error that says why. */
function closeLook(
  varying: readonly Varying[],
  formula: Formula,
  values: unknown[],
  row: number,
  column: number,
): AnswerCell {
  try {
    for (const { quantity, place, cells, down, across } of varying) {
      values[place] = readElement(
        quantity,
        (cells[row * down] as readonly Cell[])[column * across],
      );
    }
    return answerCell(invoke(formula, values));
  } catch (problem) {
    return errorCell(problem);
  }
}

/** The values that one cell of the answer is computed from. */
export function elementValues(
  args: readonly Argument<unknown>[],
  given: readonly unknown[],
  row: number,
  column: number,
): unknown[] {
  return args.map((argument, place) => {
    const cells = asCells(given[place]);
    if (cells === null || !isQuantity(argument) || isOmitted(cells)) return argument.read(cells);
    const line = cells[cells.length > 1 ? row : 0];
    return readElement(argument, line?.[columnsOf(cells) > 1 ? column : 0]);
  });
}

/** A blank among the cells of an optional argument counts as left out. */
function readElement(quantity: Quantity, cell: Cell): number | undefined {
  if (quantity.optional && isBlank(cell)) return quantity.fallback;
  return readNumber(quantity, cell);
}
