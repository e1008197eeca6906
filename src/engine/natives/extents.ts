import type { BaseFunction, BaseReferenceObject, BaseValueObject } from "@univerjs/engine-formula";
import { sheetColumns, sheetRows } from "../../workbook/formula/shared";
import type { EngineFormula } from "../executor";
import { rowsOf } from "./elementwise";

/** ROWS and COLUMNS: the engine's own count the rows that the sheet was made with, where a range has no end. */
export function extentsOf(formula: EngineFormula): BaseFunction[] {
  class Extent extends formula.BaseFunction {
    override needsReferenceObject = true;
    override minParams = 1;
    override maxParams = 1;

    constructor(
      name: string,
      private readonly down: boolean,
    ) {
      super(name);
    }

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const [given] = variants as [BaseValueObject];
      if (given.isError()) return given;
      return formula.NumberValueObject.create(this.count(given as never));
    }

    private count(given: BaseValueObject | BaseReferenceObject): number {
      if (!given.isReferenceObject()) {
        const rows = rowsOf(formula, given as BaseValueObject);
        return this.down ? rows.length : (rows[0]?.length ?? 0);
      }
      const range = (given as BaseReferenceObject).getRangeData();
      const [first, last, whole] = this.down
        ? [range.startRow, range.endRow, sheetRows]
        : [range.startColumn, range.endColumn, sheetColumns];
      return Number.isNaN(first) || Number.isNaN(last) ? whole : last - first + 1;
    }
  }

  return [new Extent("ROWS", true), new Extent("COLUMNS", false)];
}
