import fc from "fast-check";

/** What a host hands over for one call of a function: each argument's cells, undefined where left out. */
export type Given = fc.Arbitrary<readonly unknown[]>;

/** Inputs of functions as people may give them, within what each argument allows. */
export type Inputs = Readonly<Record<string, Given>>;

export const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
export const left = <T>(given: fc.Arbitrary<T>) => fc.option(given, { nil: undefined });
export const oneOf = (...texts: readonly string[]) => fc.constantFrom(...texts);

/** Cells of a row, of a column, and of a row for which one cell may stand. */
export const row = (length: number, cell: fc.Arbitrary<unknown>) =>
  cellsOf(length, cell).map((cells) => [cells]);
export const column = (length: number, cell: fc.Arbitrary<unknown>) =>
  cellsOf(length, cell).map((cells) => cells.map((one) => [one]));
export const rowOrOne = (length: number, cell: fc.Arbitrary<unknown>) =>
  fc.oneof(cell, row(length, cell));

const cellsOf = (length: number, cell: fc.Arbitrary<unknown>) =>
  fc.array(cell, { minLength: length, maxLength: length });

export const any = number(-1e6, 1e6);
export const amount = number(0, 1e6);
export const above = number(1e-3, 1e4);
export const share = number(0, 1);
export const aboveShare = number(1e-3, 1);
export const consistency = number(1e-3, 0.25);
export const dose = number(0, 50);
export const price = number(0.01, 20);
export const seed = fc.integer({ min: 0, max: 4_294_967_295 });
export const shape = oneOf("exponential", "hyperbolic", "peaked", "straight");
