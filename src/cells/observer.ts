import type { Answer } from "./answer";

/** One call of a function, as it came and as it ended: what the story behind a cell is told from. */
export interface Call {
  readonly id: string;
  /** The cell that called, where the host says ("Sheet1!B4"). */
  readonly address: string | undefined;
  readonly arguments: readonly unknown[];
  readonly answer: Answer | CustomFunctions.Error;
  /** What of the answer is computed by itself, from values of its own: each cell, each row, or only the whole. */
  readonly by: "cell" | "row" | "whole";
  /**
   * What the model took for one cell of the answer: units read, defaults in place of what was left out.
   * Refuses as the call did where that cell could not be computed.
   */
  values(row: number, column: number): readonly unknown[];
}

/** A function as it is told of: its id, how many arguments it has, and how they are read for one cell. */
export interface Told {
  readonly id: string;
  readonly count: number;
  readonly by: Call["by"];
  values(given: readonly unknown[], row: number, column: number): readonly unknown[];
}

export type Observer = (call: Call) => void;

/** Who watches. Nobody at first: then a call costs nothing more. */
export let observer: Observer | undefined;

export function observe(next: Observer | undefined): void {
  observer = next;
}

/** Tells the observer, if there is one. `given` holds the arguments and, behind them, the invocation. */
export function report(
  told: Told,
  given: readonly unknown[],
  answer: Answer | CustomFunctions.Error,
): void {
  if (observer === undefined) return;
  const invocation = given[told.count] as CustomFunctions.Invocation | undefined;
  observer({
    id: told.id,
    address: invocation?.address,
    arguments: given.slice(0, told.count),
    answer,
    by: told.by,
    values: (row, column) => told.values(given, row, column),
  });
}
