/** COUNTIF, SUMIFS and their kin: what stands beside the cells that meet criteria. */
import type {
  ArrayValueObject,
  BaseFunction,
  BaseReferenceObject,
  BaseValueObject,
} from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { placesOf } from "./criteria";
import { elementwise } from "./elementwise";

type Variant = BaseValueObject | BaseReferenceObject;

export function conditionalsOf(formula: EngineFormula): BaseFunction[] {
  const { ErrorType, ErrorValueObject, NumberValueObject } = formula;
  const number = (value: number) => NumberValueObject.create(value);

  /** One answer from the picked cells that are numbers. */
  type Answer = (numbers: readonly BaseValueObject[]) => BaseValueObject;

  const sum: Answer = (numbers) => numbers.reduce((total, one) => total.plus(one), number(0));
  const mean: Answer = (numbers) =>
    numbers.length === 0
      ? ErrorValueObject.create(ErrorType.DIV_BY_ZERO)
      : sum(numbers).divided(number(numbers.length));
  const extreme =
    (further: (one: number, other: number) => number): Answer =>
    (numbers) =>
      number(
        numbers.length === 0
          ? 0
          : numbers
              .map((one) => one.getValue() as number)
              .reduce((one, other) => further(one, other)),
      );

  class Conditional extends formula.BaseFunction {
    override needsReferenceObject = true;

    constructor(
      name: string,
      private readonly answer: Answer | undefined,
      /** One range, its criterion and where to pick; without it pairs behind the cells to pick. */
      private readonly singly: boolean,
    ) {
      super(name);
      this.minParams = singly || !answer ? 2 : 3;
      this.maxParams = singly ? (answer ? 3 : 2) : 255;
    }

    override calculate(...given: BaseValueObject[]): BaseValueObject {
      const variants = given as Variant[];
      const pairs = this.singly ? variants.slice(0, 2) : variants.slice(this.answer ? 1 : 0);
      const ranges = pairs.filter((_, at) => at % 2 === 0);
      const from = this.singly ? (variants[2] ?? ranges[0]) : variants[0];
      if (pairs.length % 2 === 1 || ![...ranges, from].every((range) => range?.isReferenceObject()))
        return ErrorValueObject.create(ErrorType.VALUE);
      const arrays = ranges.map((range) => (range as BaseReferenceObject).toArrayValueObject());
      const picked =
        this.answer && this.sizedAs(arrays[0] as ArrayValueObject, from as BaseReferenceObject);
      if ([...arrays, picked].some((one) => one && !sameSize(one, arrays[0] as ArrayValueObject)))
        return ErrorValueObject.create(ErrorType.VALUE);
      const criteria = pairs
        .filter((_, at) => at % 2 === 1)
        .map((one) =>
          one.isReferenceObject() ? (one as BaseReferenceObject).toArrayValueObject() : one,
        );
      return elementwise(formula, criteria as BaseValueObject[], (...each) =>
        this.meeting(arrays, each, picked),
      );
    }

    /** SUMIF takes as many cells as its first range has, from the first cell of the third argument on. */
    private sizedAs(range: ArrayValueObject, from: BaseReferenceObject): ArrayValueObject {
      const whole = from.toArrayValueObject();
      if (!this.singly || sameSize(whole, range)) return whole;
      const { startRow, startColumn } = from.getRangePosition();
      const endRow = startRow + range.getRowCount() - 1;
      const endColumn = startColumn + range.getColumnCount() - 1;
      const sized = { startRow, startColumn, endRow, endColumn };
      const resized = this.createReferenceObject(from, sized);
      return resized.isError() ? whole : (resized as BaseReferenceObject).toArrayValueObject();
    }

    private meeting(
      ranges: readonly ArrayValueObject[],
      criteria: readonly BaseValueObject[],
      from: ArrayValueObject | undefined,
    ): BaseValueObject {
      const lists = ranges.map((range, at) =>
        placesOf(formula, range, criteria[at] as BaseValueObject),
      );
      const places = shared(lists);
      if (!from || !this.answer) return number(places.length);
      const columns = from.getColumnCount();
      const numbers: BaseValueObject[] = [];
      for (const place of places) {
        const cell = from.get(Math.floor(place / columns), place % columns);
        if (cell?.isError()) return cell;
        if (cell?.isNumber()) numbers.push(cell);
      }
      return this.answer(numbers);
    }
  }

  return [
    new Conditional("COUNTIF", undefined, true),
    new Conditional("SUMIF", sum, true),
    new Conditional("AVERAGEIF", mean, true),
    new Conditional("COUNTIFS", undefined, false),
    new Conditional("SUMIFS", sum, false),
    new Conditional("AVERAGEIFS", mean, false),
    new Conditional("MAXIFS", extreme(Math.max), false),
    new Conditional("MINIFS", extreme(Math.min), false),
  ];
}

const sameSize = (one: ArrayValueObject, other: ArrayValueObject) =>
  one.getRowCount() === other.getRowCount() && one.getColumnCount() === other.getColumnCount();

/** The places that stand in every list. */
function shared(lists: readonly (readonly number[])[]): readonly number[] {
  const [fewest = [], ...others] = [...lists].sort((one, other) => one.length - other.length);
  return others.reduce((left, list) => {
    const wanted = new Set(list);
    return left.filter((place) => wanted.has(place));
  }, fewest);
}
