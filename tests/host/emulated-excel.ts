import vm from "node:vm";
import { inject } from "vitest";
import type { BuiltFunctions } from "../../src/build/built-functions";

/** An error as the host's class makes it. */
export class HostError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

const ERROR_CODES = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
};

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

  function call(id: string, ...given: unknown[]): HostCell[][] {
    const body = functions.get(id);
    const metadata = built.metadata.functions.find((one) => one.id === id);
    if (body === undefined || metadata === undefined) return [[new HostError("#NAME?")]];
    if (given.length > metadata.parameters.length) throw new Error(`${id}: too many arguments`);
    const filled = metadata.parameters.map(({ dimensionality, name, optional }, i) => {
      const value = given[i];
      if (value === undefined && optional !== true)
        throw new Error(`${id}: ${name} is not optional`);
      return hand(value, dimensionality === "matrix", blankAs);
    });
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

  return { call, one, built, dosewright };
}

function hand(value: unknown, matrix: boolean, blankAs: BlankAs): unknown {
  const cell = (inside: unknown) => (inside === blank ? blankAs : inside);
  if (value === undefined) return null;
  if (Array.isArray(value)) return (value as unknown[][]).map((row) => row.map(cell));
  return matrix ? [[cell(value)]] : cell(value);
}

/** A row of cells. */
export const row = (...values: unknown[]): unknown[][] => [values];

/** A column of cells. */
export const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
