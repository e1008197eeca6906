/**
 * An array formula that was entered over a fixed range: its answer is cut to the range, a single value,
 * row or column repeated, and #N/A fills what is left. Source: ECMA-376 part 1, 18.17.2.7; from memory.
 */
import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import type { Extent } from "../workbook/book";
import type { EngineFormula } from "./executor";
import type { Failures } from "./failures";
import { arrayOf, rowsOf } from "./natives/elementwise";

const NAME = "FITTED.TO.RANGE";

/** The formula as the engine takes it. */
export const fitted = (formula: string, { rows, columns }: Extent): string =>
  `${NAME}(${formula},${rows},${columns})`;

export function fittedOf(formula: EngineFormula, failures: Failures): BaseFunction {
  class Fitted extends formula.BaseFunction {
    override minParams = 3;
    override maxParams = 3;

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const [given, ...size] = variants as [BaseValueObject, BaseValueObject, BaseValueObject];
      const [rows = 1, columns = 1] = size.map((one) => Number(one.getValue()));
      const answer = rowsOf(formula, given);
      const answered = {
        rows: answer.length === 1 ? rows : answer.length,
        columns: answer[0]?.length === 1 ? columns : (answer[0]?.length ?? 0),
      };
      failures.end({ sheetId: this.subUnitId ?? "", row: this.row, column: this.column }, answered);
      const missing = formula.ErrorValueObject.create(formula.ErrorType.NA);
      return arrayOf(
        formula,
        Array.from({ length: rows }, (_, row) => {
          const line = answer[answer.length === 1 ? 0 : row];
          return Array.from(
            { length: columns },
            (_, column) => line?.[line.length === 1 ? 0 : column] ?? missing,
          );
        }),
      );
    }
  }

  return new Fitted(NAME);
}
