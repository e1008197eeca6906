import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { errorFrom } from "../error-origins";
import type { EngineFormula } from "../executor";
import { arrayOf, rowsOf, turned } from "./elementwise";
import { isFailed, wholeNumbers } from "./number-lists";

type Rows = BaseValueObject[][];

/**
 * CHOOSEROWS, CHOOSECOLS, VSTACK and HSTACK. The engine's own choose by single numbers only, not by a list
 * of them, and give up a whole stack for an error in one of its cells.
 */
export function blocksOf(formula: EngineFormula): BaseFunction[] {
  const { ErrorType, ErrorValueObject } = formula;

  /** Works on rows; for columns what comes and what goes is turned. */
  abstract class Block extends formula.BaseFunction {
    override maxParams = 255;

    constructor(
      name: string,
      private readonly byColumn: boolean,
    ) {
      super(name);
    }

    protected rowsIn(value: BaseValueObject): Rows {
      const rows = rowsOf(formula, value);
      return this.byColumn ? turned(rows) : rows;
    }

    protected answer(rows: Rows): BaseValueObject {
      return arrayOf(formula, this.byColumn ? turned(rows) : rows);
    }
  }

  class Choose extends Block {
    override minParams = 2;

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const [given, ...lists] = variants as [BaseValueObject, ...BaseValueObject[]];
      if (given.isError()) return given;
      const rows = this.rowsIn(given);
      const chosen: Rows = [];
      for (const list of lists) {
        const numbers = wholeNumbers(formula, list);
        if (isFailed(numbers)) return numbers;
        for (const number of numbers) {
          const row = number === 0 ? undefined : rows.at(number > 0 ? number - 1 : number);
          if (!row) return ErrorValueObject.create(ErrorType.VALUE);
          chosen.push(row);
        }
      }
      return this.answer(chosen);
    }
  }

  class Stack extends Block {
    override minParams = 1;

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const rows = variants.flatMap((variant) => this.rowsIn(variant));
      const width = Math.max(...rows.map((row) => row.length));
      const missing = ErrorValueObject.create(ErrorType.NA);
      return this.answer(
        rows.map((row) => [...row, ...Array.from({ length: width - row.length }, () => missing)]),
      );
    }
  }

  return [
    new Choose("CHOOSEROWS", false),
    new Choose("CHOOSECOLS", true),
    new Stack("VSTACK", false),
    new Stack("HSTACK", true),
  ];
}

/** TAKE and DROP of a list of numbers: the engine fills a cell for each of them with an error that says nothing. */
export function withSingleNumbers(
  formula: EngineFormula,
  { name }: BaseFunction,
  calculate: BaseFunction["calculate"],
): BaseFunction["calculate"] {
  if (name !== "TAKE" && name !== "DROP") return calculate;
  const message = `${name} wants one number of rows and one of columns, not a list. CHOOSEROWS and CHOOSECOLS take lists.`;
  return (...variants) => {
    const numbers = variants.slice(1) as BaseValueObject[];
    const isList = numbers.some((one) => rowsOf(formula, one).flat().length > 1);
    return isList
      ? errorFrom(formula, formula.ErrorType.VALUE, { message, from: undefined })
      : calculate(...variants);
  };
}
