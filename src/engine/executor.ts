/** Our functions, as the grid's formula engine calls them. */
import type { ArrayValueObject, BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { addressOf, sheetPrefix } from "../workbook/address";
import { type ErrorCell, readArgument } from "./arguments";
import type { CellPlace } from "./cell-place";
import { errorFrom, originOf, placeOf } from "./error-origins";
import type { Failures } from "./failures";
import type { LoadedFunction, LoadedFunctions } from "./functions";
import { fromCell, type Root } from "./reasons";
import { spillAround } from "./spill";
import type { Place } from "./structured";

export type EngineFormula = typeof import("@univerjs/engine-formula");

export interface ExecutorContext {
  readonly formula: EngineFormula;
  readonly failures: Failures;
  readonly sheetName: (sheetId: string) => string;
}

export function executorsOf(loaded: LoadedFunctions, context: ExecutorContext): BaseFunction[] {
  const { formula, failures, sheetName } = context;
  /** Where an error arose that a cell brought: a function hands the very object on. */
  const roots = new WeakMap<object, Root>();

  class Executor extends formula.BaseFunction {
    // The range itself instead of an array made of it: reading its cells here takes half the time.
    override needsReferenceObject = true;

    constructor(private readonly own: LoadedFunction) {
      super(own.name);
    }

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const cell = { sheetId: this.subUnitId ?? "", row: this.row, column: this.column };
      failures.visit(cell);
      const { parameters } = this.own.metadata;
      if (variants.length > parameters.length)
        return fail(cell, "#VALUE!", atMost(this.own.name, parameters.length));
      const given: unknown[] = [];
      for (const [index, parameter] of parameters.entries()) {
        const value = readArgument(
          variants[index],
          parameter.dimensionality === "matrix",
          (error, source) => hearsay(source, error, cell),
        );
        if (value === undefined)
          return fail(cell, "#VALUE!", `${parameter.name} takes a single cell, not a range.`);
        given.push(value);
      }
      const address = sheetPrefix(sheetName(cell.sheetId)) + addressOf(cell.row, cell.column);
      given.push({ address, functionName: this.own.metadata.id });
      let answer: unknown;
      try {
        answer = this.own.call(...given);
      } catch (thrown) {
        answer = loaded.readError(thrown) ? thrown : unforeseen(this.own.name, thrown);
      }
      return Array.isArray(answer) ? grid(answer, cell) : single(answer, cell, 0, 0);
    }
  }

  // A cell that failed hands its message on, so that every cell below it can say where the fault lies.
  function hearsay(source: ErrorCell | BaseValueObject, error: string, reader: CellPlace) {
    const { place, words } = "reference" in source ? rootAt(source, error) : rootOf(source);
    if (!place) return loaded.errorOf(error, words);
    const root = { place, words };
    const handed = loaded.errorOf(error, fromCell(root, sheetName(reader.sheetId)));
    roots.set(handed, root);
    return handed;
  }

  function rootAt({ reference, row, column }: ErrorCell, error: string): Root {
    const around = spillAround(reference, row, column);
    const anchor = around ? { row: around.startRow, column: around.startColumn } : { row, column };
    const sheetId = reference.getSheetId();
    const source = { sheetId, ...anchor };
    const known = failures.find(source, error, row - anchor.row, column - anchor.column);
    const place = known?.from ?? { sheet: sheetName(sheetId), row, column };
    return { place, words: known?.message };
  }

  /** Of an error that was computed on the way: one that arose there has no cell. */
  function rootOf(error: BaseValueObject): {
    place?: Place | undefined;
    words?: string | undefined;
  } {
    const origin = originOf(error);
    if (!origin) return {};
    return "sheetId" in origin
      ? { place: placeOf(origin, sheetName) }
      : { place: origin.from, words: origin.message };
  }

  const unforeseen = (name: string, thrown: unknown) =>
    loaded.errorOf(
      "#VALUE!",
      `${name} broke off: ${thrown instanceof Error ? thrown.message : thrown}`,
    );

  function fail(
    cell: CellPlace,
    error: string,
    message?: string,
    row = 0,
    column = 0,
    from?: Place,
  ) {
    failures.add(cell, { error, message, row, column, from });
    return errorFrom(formula, error, { message, from });
  }

  function single(value: unknown, cell: CellPlace, row: number, column: number): BaseValueObject {
    if (typeof value === "number")
      return Number.isFinite(value)
        ? formula.NumberValueObject.create(value)
        : fail(cell, "#NUM!", undefined, row, column);
    if (typeof value === "string") return formula.StringValueObject.create(value);
    if (typeof value === "boolean") return formula.BooleanValueObject.create(value);
    // Null is shown as 0, as a host does.
    if (value === null) return formula.NumberValueObject.create(0);
    const failed = loaded.readError(value);
    if (failed) {
      const root = roots.get(value as object);
      const message = root ? root.words : failed.message;
      return fail(cell, failed.error, message, row, column, root?.place);
    }
    return fail(
      cell,
      "#VALUE!",
      "The function gave back something that no cell can show.",
      row,
      column,
    );
  }

  function grid(answer: unknown[], cell: CellPlace): BaseValueObject {
    const columns = Array.isArray(answer[0]) ? answer[0].length : 0;
    if (columns === 0 || !answer.every((row) => Array.isArray(row) && row.length === columns))
      return fail(cell, "#VALUE!", "The function gave back rows of unequal length.");
    const values = (answer as unknown[][]).map((row, rowIndex) =>
      row.map((value, column) => single(value, cell, rowIndex, column)),
    );
    if (values.length === 1 && columns === 1) return values[0]?.[0] as BaseValueObject;
    const array: ArrayValueObject = formula.ArrayValueObject.create({
      calculateValueList: values,
      rowCount: values.length,
      columnCount: columns,
      unitId: "",
      sheetId: "",
      row: -1,
      column: -1,
    });
    return array;
  }

  return loaded.functions.map((own) => new Executor(own));
}

const atMost = (name: string, count: number) =>
  `${name} takes ${count} ${count === 1 ? "argument" : "arguments"} at most.`;
