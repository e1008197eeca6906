import type { ICellData, IRange, IUnitRange, Nullable, Workbook } from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/engine-formula";
import { spilledRanges } from "./read-cells";

interface Spill {
  readonly range: IRange;
  readonly values: readonly unknown[];
}

/** Remembers what formulas have spilled, and tells which spilled ranges changed since it was last asked. */
export class SpillWatch {
  #known = new Map<string, Spill>();

  constructor(
    private readonly model: FormulaDataModel,
    private readonly workbook: Workbook,
  ) {}

  changes(): IUnitRange[] {
    const unitId = this.workbook.getUnitId();
    const now = new Map<string, Spill>();
    const changed: IUnitRange[] = [];
    for (const worksheet of this.workbook.getSheets()) {
      const sheetId = worksheet.getSheetId();
      const cells = this.model.getArrayFormulaCellData()[unitId]?.[sheetId];
      for (const range of spilledRanges(this.model, worksheet)) {
        const key = `${sheetId}!${range.startRow},${range.startColumn}`;
        const spill = { range, values: valuesIn(range, cells) };
        const before = this.#known.get(key);
        now.set(key, spill);
        if (before && same(before.values, spill.values) && sameRange(before.range, range)) continue;
        changed.push({ unitId, sheetId, range });
        if (before) changed.push({ unitId, sheetId, range: before.range });
      }
    }
    for (const [key, { range }] of this.#known)
      if (!now.has(key)) changed.push({ unitId, sheetId: key.split("!")[0] as string, range });
    this.#known = now;
    return changed;
  }
}

function valuesIn(
  range: IRange,
  cells: Nullable<Record<number, Nullable<Record<number, Nullable<ICellData>>>>>,
): unknown[] {
  const values: unknown[] = [];
  for (let row = range.startRow; row <= range.endRow; row++)
    for (let column = range.startColumn; column <= range.endColumn; column++)
      values.push(cells?.[row]?.[column]?.v);
  return values;
}

const same = (one: readonly unknown[], other: readonly unknown[]) =>
  one.length === other.length && one.every((value, index) => Object.is(value, other[index]));

const sameRange = (one: IRange, other: IRange) =>
  one.endRow === other.endRow && one.endColumn === other.endColumn;
