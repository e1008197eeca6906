import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { arrayOf, rowsOf, turned } from "./elementwise";

/** The engine's own UNIQUE tells "Liner" from "liner", which no comparison of a spreadsheet does. */
export function uniqueOf(formula: EngineFormula): BaseFunction {
  const { ErrorType, ErrorValueObject } = formula;

  const keyOf = (line: readonly BaseValueObject[]) =>
    JSON.stringify(
      line.map((cell) => {
        const value = cell.isNull() ? 0 : cell.getValue();
        return typeof value === "string" ? value.toLowerCase() : value;
      }),
    );

  class Unique extends formula.BaseFunction {
    override minParams = 1;
    override maxParams = 3;

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const [given, byColumn, once] = variants as [
        BaseValueObject,
        BaseValueObject?,
        BaseValueObject?,
      ];
      const failed = variants.find((variant) => variant.isError());
      if (failed) return failed;
      const rows = rowsOf(formula, given);
      const lines = byColumn?.getValue() ? turned(rows) : rows;
      const byKey = new Map<string, { line: BaseValueObject[]; count: number }>();
      for (const line of lines) {
        const key = keyOf(line);
        const known = byKey.get(key);
        if (known) known.count++;
        else byKey.set(key, { line, count: 1 });
      }
      const kept = [...byKey.values()]
        .filter(({ count }) => !once?.getValue() || count === 1)
        .map(({ line }) => line);
      if (kept.length === 0) return ErrorValueObject.create(ErrorType.CALC);
      return arrayOf(formula, byColumn?.getValue() ? turned(kept) : kept);
    }
  }

  return new Unique("UNIQUE");
}
