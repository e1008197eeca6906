import type { ICellData, IRange, Nullable } from "@univerjs/core";
import type { BaseReferenceObject } from "@univerjs/engine-formula";
import { isErrorText } from "../arguments";
import { errorFrom } from "../error-origins";
import type { EngineFormula } from "../executor";
import { holdsCell } from "../ranges";

const TEXT = 1;

/** Where an error stands, for the value that is made of its cell. */
const PLACE = Symbol("place");
type Placed = ICellData & { [PLACE]?: { readonly row: number; readonly column: number } };

/** A mark by which the engine knows that a cell is not blank. */
const filled = { f: "=" };

/**
 * A formula that gives the empty text fills its cell: ISBLANK is FALSE there, and adding 1 to it an error.
 * The engine takes a computed cell without a character for a blank one. Beside, it builds two tables for
 * every cell that it reads; here nothing is built. An error tells the cell that it was read from.
 */
export function mendCells(formula: EngineFormula): void {
  const prototype = formula.BaseReferenceObject.prototype;
  if (typeof prototype.getCellData !== "function" || !prototype.getCellValueObject)
    throw new Error("The grid's engine reads its cells in another way: see mends/cells.");

  prototype.getCellData = function (this: BaseReferenceObject, row, column) {
    const cell = cellAt(this, row, column);
    return cell && isErrorText(cell.v) ? { ...cell, [PLACE]: { row, column } } : cell;
  } as typeof prototype.getCellData;

  const read = prototype.getCellValueObject;
  prototype.getCellValueObject = function (this: BaseReferenceObject, cell: Placed) {
    const place = cell[PLACE];
    return place
      ? errorFrom(formula, String(cell.v), { sheetId: this.getSheetId(), ...place })
      : read.call(this, cell);
  } as typeof read;
}

function cellAt(from: BaseReferenceObject, row: number, column: number): Nullable<ICellData> {
  const computed =
    from.getCurrentRuntimeSheetData()?.getValue(row, column) ||
    from.getCurrentRuntimeActiveArrayFormulaCellData()?.getValue(row, column) ||
    from.getRuntimeFeatureCellValue(row, column);
  if (computed) return notBlank(computed);
  const spilled = from.getCurrentActiveArrayFormulaCellData()?.getValue(row, column);
  if (!spilled) return from.getCurrentActiveSheetData()?.cellData.getValue(row, column);
  return isSpilledAnew(from, row, column) ? null : notBlank(spilled);
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
