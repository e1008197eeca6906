/**
 * Native functions of the grid's engine that are wrong or missing, put right; and a guard around all of
 * them.
 */
import type {
  ArrayValueObject,
  BaseFunction,
  BaseReferenceObject,
  BaseValueObject,
} from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { spillAround } from "../spill";
import { aggregateOf } from "./aggregate";
import { adapted } from "./arguments";
import { blocksOf, withSingleNumbers } from "./blocks";
import { numberOf, textOf } from "./coercion";
import { conditionalsOf } from "./conditional";
import { eachCellOf, type OneByOne } from "./elementwise";
import { extentsOf } from "./extents";
import { chooseOf, handingCellsOn } from "./lookups";
import { type NumericNative, numericNatives } from "./numbers";
import { operatorsOf } from "./operators";
import { sortingOf } from "./sorting";
import { uniqueOf } from "./unique";
import { wildcardsWithin } from "./wildcards";

/** One native that throws would end the whole calculation: it gives an error in its own cell instead. */
export function guarded(formula: EngineFormula, executor: BaseFunction): BaseFunction {
  const calculate = withSingleNumbers(
    formula,
    executor,
    handingCellsOn(formula, executor, adapted(formula, executor)),
  );
  // "3%" and "1-2" are texts: the engine would hand them over as 0.03 and a date.
  executor.isArgumentsIgnoreNumberPattern = () => true;
  executor.calculate = (...variants) => {
    try {
      return placeless(calculate(...variants), executor);
    } catch {
      return formula.ErrorValueObject.create(formula.ErrorType.VALUE);
    }
  };
  return executor;
}

type Answer = ReturnType<BaseFunction["calculate"]>;

/**
 * Some of the engine's functions say of their answer that it stands in the cells below their formula. A
 * look-up in it would then find what the index of these columns holds.
 */
function placeless<T extends Answer>(answer: T, { row, column }: BaseFunction): T {
  if (!answer.isValueObject() || !answer.isArray()) return answer;
  const array = answer as unknown as ArrayValueObject;
  if (array.getCurrentRow() === row && array.getCurrentColumn() === column)
    array.setCurrent(-1, -1);
  return answer;
}

export function nativesOf(formula: EngineFormula): BaseFunction[] {
  const { ErrorType, ErrorValueObject, NumberValueObject } = formula;

  const EachCell = eachCellOf(formula);

  const numeric =
    ({ compute, format }: NumericNative): OneByOne =>
    (...values) => {
      const numbers = values.map((value) => numberOf(formula, value));
      const failed = numbers.find((number) => number.isError());
      if (failed) return failed;
      const result = compute(...numbers.map((number) => number.getValue() as number));
      return result === undefined || !Number.isFinite(result)
        ? ErrorValueObject.create(ErrorType.NUM)
        : NumberValueObject.create(result, format);
    };

  /** The engine's own SEARCH knows no wildcards. */
  const search: OneByOne = (sought, within, start) => {
    const from = start === undefined ? 1 : Math.trunc(Number(start.getValue()));
    const text = textOf(within as BaseValueObject);
    const pattern = wildcardsWithin(textOf(sought as BaseValueObject));
    pattern.lastIndex = from - 1;
    const found = from >= 1 && from <= text.length + 1 ? pattern.exec(text) : null;
    return found
      ? NumberValueObject.create(found.index + 1)
      : ErrorValueObject.create(ErrorType.VALUE);
  };

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
      // A formula whose answer is one value fills its own cell; what was typed fills nothing.
      const cell = reference.getCurrentActiveSheetData()?.cellData.getValue(startRow, startColumn);
      return cell?.f || cell?.si ? (reference as never) : ErrorValueObject.create(ErrorType.REF);
    }
  }

  return [
    ...Object.entries(numericNatives).map(
      ([name, native]) => new EachCell(name, [native.arguments].flat(), numeric(native)),
    ),
    new EachCell("SEARCH", [2, 3], search),
    new AnchorArray("ANCHORARRAY"),
    ...operatorsOf(formula),
    ...conditionalsOf(formula),
    ...extentsOf(formula),
    aggregateOf(formula),
    chooseOf(formula),
    uniqueOf(formula),
    ...sortingOf(formula),
    ...blocksOf(formula),
  ];
}
