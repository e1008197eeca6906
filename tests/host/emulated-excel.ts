import vm from "node:vm";
import { inject } from "vitest";
import type { BuiltFunctions } from "../../src/build/built-functions";
import { ERROR_CODES, HostError } from "./host-error";
import { toTheEnd } from "./ranges";

export { HostError } from "./host-error";

export type HostCell = number | string | boolean | null | HostError | object;

/** How the two kinds of host hand over a blank cell. */
export type BlankAs = 0 | null | "";

/** A blank cell in a test: each host turns it into what it really hands over. */
export const blank = Symbol("blank cell");

export interface EmulatedExcel {
  /**
   * Calls a function by its id. A single value is handed over as the one-cell range [[v]], `undefined` as an
   * omitted argument, and the arguments that are missing at the end are filled with null, then comes the
   * invocation. A failed call gives the error as its one cell.
   */
  call(id: string, ...given: unknown[]): HostCell[][];
  /** The same without asking whether the host would allow it: anything in any place. */
  callWith(id: string, given: readonly unknown[]): HostCell[][];
  /** The one cell of an answer that has just one. */
  one(id: string, ...given: unknown[]): HostCell;
  readonly built: BuiltFunctions;
  /** What the bundle itself offers beside the functions. */
  readonly dosewright: { observe(observer: ((call: unknown) => void) | undefined): void };
}

/** Loads the built functions into a bare engine: nothing exists there but CustomFunctions. */
export function emulateExcel(blankAs: BlankAs = null, built = inject("functions")): EmulatedExcel {
  const functions = new Map<string, (...given: unknown[]) => unknown>();
  const CustomFunctions = {
    associate: (id: string, body: (...given: unknown[]) => unknown) => functions.set(id, body),
    Error: HostError,
    ErrorCode: ERROR_CODES,
  };
  const engine = vm.createContext({ CustomFunctions });
  vm.runInContext(built.code, engine);
  const dosewright = (engine as unknown as Pick<EmulatedExcel, "dosewright">).dosewright;

  const parametersOf = (id: string) =>
    built.metadata.functions.find((one) => one.id === id)?.parameters ?? [];

  function call(id: string, ...given: unknown[]): HostCell[][] {
    const parameters = parametersOf(id);
    if (functions.has(id) && given.length > parameters.length)
      throw new Error(`${id}: too many arguments`);
    parameters.forEach(({ name, optional }, i) => {
      if (given[i] === undefined && optional !== true)
        throw new Error(`${id}: ${name} is not optional`);
    });
    return callWith(id, given);
  }

  function callWith(id: string, given: readonly unknown[]): HostCell[][] {
    const body = functions.get(id);
    if (body === undefined) return [[new HostError("#NAME?")]];
    const filled = parametersOf(id).map(({ dimensionality }, i) =>
      hand(given[i], dimensionality === "matrix", blankAs),
    );
    try {
      const answer = body(...filled, { functionName: id, address: "Sheet1!A1" });
      return Array.isArray(answer) ? (answer as HostCell[][]) : [[answer as HostCell]];
    } catch (problem) {
      if (problem instanceof HostError) return [[problem]];
      throw problem;
    }
  }

  function one(id: string, ...given: unknown[]): HostCell {
    const answer = call(id, ...given);
    if (answer.length !== 1 || answer[0]?.length !== 1) throw new Error(`${id}: not a single cell`);
    return answer[0][0] as HostCell;
  }

  return { call, callWith, one, built, dosewright };
}

function hand(value: unknown, matrix: boolean, blankAs: BlankAs): unknown {
  const cell = (inside: unknown) => (inside === blank ? blankAs : inside);
  if (value === undefined) return null;
  if (Array.isArray(value)) {
    // The blank rows of a whole column are one and the same: it is turned into cells once.
    const done = new Map<unknown[], unknown[]>();
    return (value as unknown[][]).map((row) => {
      const cells = done.get(row) ?? row.map(cell);
      done.set(row, cells);
      return cells;
    });
  }
  return matrix ? [[cell(value)]] : cell(value);
}

/** The whole column whose first cells hold these values: the rest of a million is blank. */
export const wholeColumn = (...values: unknown[]): unknown[][] =>
  toTheEnd(
    values.map((value) => [value]),
    blank,
  );

/** An error as the different hosts hand it over: their own object, a plain one, and the two of data types. */
export const errorForms = (code: string): readonly object[] => [
  new HostError(code),
  { code },
  { type: "Error", basicType: "Error", basicValue: code },
  { basicType: "Error", basicValue: code },
];

/** A row of cells. */
export const row = (...values: unknown[]): unknown[][] => [values];

/** A column of cells. */
export const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
