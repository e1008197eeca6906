import type { Answer } from "./answer";

/** One call of a function, as it came and as it ended: what the story behind a cell is told from. */
export interface Call {
  readonly id: string;
  /** The cell that called, where the host says ("Sheet1!B4"). */
  readonly address: string | undefined;
  readonly arguments: readonly unknown[];
  readonly answer: Answer | CustomFunctions.Error;
}

export type Observer = (call: Call) => void;

/** Who watches. Nobody at first: then a call costs nothing more. */
export let observer: Observer | undefined;

export function observe(next: Observer | undefined): void {
  observer = next;
}

/** Tells the observer, if there is one. `given` holds the arguments and, behind them, the invocation. */
export function report(
  id: string,
  count: number,
  given: readonly unknown[],
  answer: Answer | CustomFunctions.Error,
): void {
  if (observer === undefined) return;
  const invocation = given[count] as CustomFunctions.Invocation | undefined;
  const address = invocation?.address;
  observer({ id, address, arguments: given.slice(0, count), answer });
}
