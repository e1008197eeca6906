import { type Answer, type AnswerCell, answerCell, errorCell } from "./answer";
import type { Argument, Values } from "./argument";
import { manyCases, refuseRow } from "./cases";
import { asCells, type Cells } from "./cell";
import type { CellFunction } from "./elementwise";
import { columnsOf, commonRows } from "./extent";
import type { Told } from "./observer";
import { type Quantity, readNumber } from "./quantity";
import { settle } from "./settle";
import { wholeReader } from "./whole";

/**
 * A function that learns once from data taken as a whole, and then answers a number, or each number of a
 * column with a row of its own. A bad number spoils its own row only.
 */
export function fromData<const A extends readonly Argument<unknown>[]>(
  id: string,
  asked: Quantity,
  data: A,
  learn: (...values: Values<A>) => (asked: number) => readonly number[],
): CellFunction {
  const formula = learn as (...values: unknown[]) => (asked: number) => readonly number[];
  const readData = wholeReader(data);

  function compute(given: readonly unknown[]): Answer {
    const cells = column(asked, given[0]);
    const answer = formula(...readData(given.slice(1)));
    const rowOf = (value: number): AnswerCell[] => answer(value).map(answerCell);
    if (cells === null) return [rowOf(asked.read(asCells(given[0])))];
    const rows = commonRows([{ name: asked.name, cells }]);
    return manyCases(
      Array.from({ length: rows }, (_, row) => {
        try {
          return rowOf(readNumber(asked, cells[row]?.[0]));
        } catch (problem) {
          return errorCell(problem);
        }
      }),
    );
  }

  const told: Told = {
    id,
    count: data.length + 1,
    by: "row",
    values(given, row) {
      const cells = column(asked, given[0]);
      const value =
        cells === null ? asked.read(asCells(given[0])) : readNumber(asked, cells[row]?.[0]);
      return [value, ...readData(given.slice(1))];
    },
  };
  return (...given) => settle(told, given, () => compute(given));
}

/** The cells of a column; null where there is one cell or none. */
function column(asked: Quantity, given: unknown): Cells | null {
  const cells = asCells(given);
  if (cells !== null && columnsOf(cells) > 1) refuseRow(asked.name);
  return cells === null || cells.length < 2 ? null : cells;
}
