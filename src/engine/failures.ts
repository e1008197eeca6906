/**
 * Why cells fail. The grid's error values hold no text, so the messages that our functions give are
 * kept beside them, by the cell of the formula.
 */
import type { Extent } from "../workbook/book";
import { type CellPlace, keyOfPlace } from "./cell-place";
import type { Place } from "./structured";

export interface Failure {
  readonly error: string;
  /** Undefined where the function says nothing of its own: an argument brought the error with it. */
  readonly message: string | undefined;
  /** The cell that brought the error with it, where that is known. */
  readonly from?: Place | undefined;
  /** Where in the spilled answer the error stands. */
  readonly row: number;
  readonly column: number;
}

const placeOf = (row: number, column: number) => `${row},${column}`;

export class Failures {
  #run = 0;
  readonly #byCell = new Map<string, { run: number; list: Failure[] }>();
  readonly #shown = new Map<string, ReadonlyMap<string, Failure>>();
  readonly #ends = new Map<string, Extent>();

  /** A formula may be computed again in every run; what it said in an earlier one no longer counts. */
  startRun(): void {
    this.#run++;
  }

  /** A function of this formula is being called: forget what the formula said in an earlier run. */
  visit(cell: CellPlace): void {
    if (this.#byCell.size === 0) return;
    const key = keyOfPlace(cell);
    if (this.#byCell.get(key)?.run !== this.#run) this.#byCell.delete(key);
  }

  add(cell: CellPlace, failure: Failure): void {
    const key = keyOfPlace(cell);
    const known = this.#byCell.get(key);
    if (known?.run === this.#run) known.list.push(failure);
    else this.#byCell.set(key, { run: this.#run, list: [failure] });
  }

  /** Errors that the answer of this formula shows, of which it is known where they came from. */
  show(cell: CellPlace, shown: readonly Failure[]): void {
    const key = keyOfPlace(cell);
    if (shown.length > 0)
      this.#shown.set(key, new Map(shown.map((one) => [placeOf(one.row, one.column), one])));
    else if (this.#shown.size > 0) this.#shown.delete(key);
  }

  /** Whatever a formula said before, this is why it fails. */
  replace(cell: CellPlace, failure: Failure): void {
    this.#shown.delete(keyOfPlace(cell));
    this.#byCell.set(keyOfPlace(cell), { run: this.#run, list: [failure] });
  }

  /** The answer of this formula is no larger, whatever range it fills. */
  end(cell: CellPlace, answered: Extent): void {
    this.#ends.set(keyOfPlace(cell), answered);
  }

  /** Whether the answer of a formula ends before the cell so many rows and columns into what it fills. */
  isBeyond(cell: CellPlace, row: number, column: number): boolean {
    const end = this.#ends.get(keyOfPlace(cell));
    return end !== undefined && (row >= end.rows || column >= end.columns);
  }

  /** What is known of the cell so many rows and columns into what the formula fills, if it shows this error. */
  find(formula: CellPlace, error: string, row: number, column: number): Failure | undefined {
    const shown = this.#shown.get(keyOfPlace(formula))?.get(placeOf(row, column));
    if (shown?.error === error) return shown;
    const alike = this.#byCell
      .get(keyOfPlace(formula))
      ?.list.filter((known) => known.error === error);
    const exact = alike?.find((known) => known.row === row && known.column === column);
    return exact ?? alike?.find((known) => known.message !== undefined);
  }
}
