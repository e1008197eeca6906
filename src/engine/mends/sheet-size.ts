import type { BaseFunction } from "@univerjs/engine-formula";
import { sheetColumns, sheetRows } from "../../workbook/formula/shared";
import type { EngineFormula } from "../executor";

/**
 * SEQUENCE and RANDARRAY give as many rows as a sheet can have, also inside another function: the engine
 * stops at those that the sheet was made with.
 */
export function mendSheetSize({ BaseFunction }: EngineFormula): void {
  const prototype = BaseFunction.prototype;
  const keep = prototype.setSheetRowColumnCount;
  prototype.setSheetRowColumnCount = function (this: BaseFunction) {
    keep.call(this, sheetRows, sheetColumns);
  };
}
