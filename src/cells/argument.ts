import type { Cells } from "./cell";

/** One argument of a function: what it is called, and how its cells become a value. */
export interface Argument<T> {
  readonly name: string;
  read(cells: Cells | null): T;
}

/** What a list of arguments reads to: the arguments of the model's function, in order. */
export type Values<A extends readonly Argument<unknown>[]> = {
  [K in keyof A]: A[K] extends Argument<infer T> ? T : never;
};
