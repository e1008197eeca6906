/**
 * Native functions of the grid's engine that are wrong or missing, put right; and a guard around all of
 * them. The numbers behind the corrected ones are in native-numbers.
 */
import type {
  ArrayValueObject as ArrayValue,
  BaseFunction,
  BaseReferenceObject,
  BaseValueObject,
} from "@univerjs/engine-formula";
import type { EngineFormula } from "./executor";
import { type NumericNative, numericNatives } from "./native-numbers";
import { spillAround } from "./spill";

/** One native that throws would end the whole calculation: it gives an error in its own cell instead. */
export function guardNatives(formula: EngineFormula, executors: Iterable<BaseFunction>): void {
  for (const executor of executors) {
    const calculate = executor.calculate.bind(executor);
    executor.calculate = (...variants) => {
      try {
        return calculate(...variants);
      } catch {
        return formula.ErrorValueObject.create(formula.ErrorType.VALUE);
      }
    };
  }
}

export function nativesOf(formula: EngineFormula): BaseFunction[] {
  const { ArrayValueObject, ErrorType, ErrorValueObject, NumberValueObject } = formula;

  class Numeric extends formula.BaseFunction {
    constructor(
      name: string,
      private readonly native: NumericNative,
    ) {
      super(name);
      this.minParams = native.arguments;
      this.maxParams = native.arguments;
    }

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      if (!variants.some((variant) => variant.isArray())) return this.single(variants);
      const arrays = variants.filter((one) => one.isArray()) as ArrayValue[];
      const rowCount = Math.max(...arrays.map((array) => array.getRowCount()));
      const columnCount = Math.max(...arrays.map((array) => array.getColumnCount()));
      const calculateValueList = Array.from({ length: rowCount }, (_, row) =>
        Array.from({ length: columnCount }, (_, column) =>
          this.single(variants.map((one) => this.at(one, row, column))),
        ),
      );
      const place = { unitId: "", sheetId: "", row: -1, column: -1 };
      return ArrayValueObject.create({ calculateValueList, rowCount, columnCount, ...place });
    }

    /** A single row or column goes with every row or column of the others. */
    private at(value: BaseValueObject, row: number, column: number): BaseValueObject {
      if (!value.isArray()) return value;
      const array = value as ArrayValue;
      const at = array.get(
        array.getRowCount() === 1 ? 0 : row,
        array.getColumnCount() === 1 ? 0 : column,
      );
      return at || ErrorValueObject.create(ErrorType.NA);
    }

    private single(values: BaseValueObject[]): BaseValueObject {
      const failed = values.find((value) => value.isError());
      if (failed) return failed;
      const numbers = values.map((value) => (value.isNull() ? 0 : Number(value.getValue())));
      if (numbers.some(Number.isNaN)) return ErrorValueObject.create(ErrorType.VALUE);
      const result = this.native.compute(...numbers);
      return result === undefined || !Number.isFinite(result)
        ? ErrorValueObject.create(ErrorType.NUM)
        : NumberValueObject.create(result, this.native.format);
    }
  }

  /** The cells that the formula in the given cell fills; the mark # of a spreadsheet. */
  class AnchorArray extends formula.BaseFunction {
    override needsReferenceObject = true;
    override minParams = 1;
    override maxParams = 1;

    override calculate(...variants: BaseValueObject[]): ReturnType<BaseFunction["calculate"]> {
      const reference = variants[0] as unknown as BaseReferenceObject;
      if (!reference.isReferenceObject()) return ErrorValueObject.create(ErrorType.REF);
      const { startRow, startColumn } = reference.getRangePosition();
      const range = spillAround(reference, startRow, startColumn);
      if (range?.startRow === startRow && range.startColumn === startColumn)
        return this.createReferenceObject(reference, range);
      return reference as never;
    }
  }

  const numeric = Object.entries(numericNatives).map(([name, native]) => new Numeric(name, native));
  return [...numeric, new AnchorArray("ANCHORARRAY")];
}
