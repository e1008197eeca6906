import type { ICellData, IRange, Nullable } from "@univerjs/core";
import type { BaseReferenceObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";
import { holdsCell } from "../ranges";

const TEXT = 1;

/** A mark by which the engine knows that a cell is not blank. */
const filled = { f: "=" };

/**
 * A formula that gives the empty text fills its cell: ISBLANK is FALSE there, and adding 1 to it an error.
 * The engine takes a computed cell without a character for a blank one. Beside, it builds two tables for
 * every cell that it reads; here nothing is built.
 */
export function mendCells({ BaseReferenceObject }: EngineFormula): void {
  const prototype = BaseReferenceObject.prototype;
  if (typeof prototype.getCellData !== "function")
    throw new Error("The grid's engine reads its cells in another way: see mends/cells.");

  prototype.getCellData = function (this: BaseReferenceObject, row, column) {
    const computed =
      this.getCurrentRuntimeSheetData()?.getValue(row, column) ||
      this.getCurrentRuntimeActiveArrayFormulaCellData()?.getValue(row, column) ||
      this.getRuntimeFeatureCellValue(row, column);
    if (computed) return notBlank(computed);
    const spilled = this.getCurrentActiveArrayFormulaCellData()?.getValue(row, column);
    if (!spilled) return this.getCurrentActiveSheetData()?.cellData.getValue(row, column);
    return isSpilledAnew(this, row, column) ? null : notBlank(spilled);
  } as typeof prototype.getCellData;
}

const notBlank = (cell: ICellData): ICellData =>
  cell.v === "" && cell.t === TEXT ? { ...cell, ...filled } : cell;

type Ranges = Nullable<Record<number, Nullable<Record<number, Nullable<IRange>>>>>;

/** Whether the formula that filled the cell in the last calculation has an answer in this one. */
function isSpilledAnew(reference: BaseReferenceObject, row: number, column: number): boolean {
  const now = reference.getCurrentRuntimeActiveArrayFormulaRange() as unknown as Ranges;
  const before = reference.getCurrentActiveArrayFormulaRange() as unknown as Ranges;
  for (const [down, ranges] of Object.entries(before ?? {}))
    for (const [across, range] of Object.entries(ranges ?? {}))
      if (range && holdsCell(range, row, column) && now?.[Number(down)]?.[Number(across)])
        return true;
  return false;
}
