import type { IRange } from "@univerjs/core";
import type { BaseReferenceObject } from "@univerjs/engine-formula";
import { holdsCell } from "./ranges";

/** The range that a formula fills around a cell, as this calculation knows it, or else as the last one left it. */
export function spillAround(
  reference: BaseReferenceObject,
  row: number,
  column: number,
): IRange | undefined {
  for (const ranges of [
    reference.getCurrentRuntimeActiveArrayFormulaRange(),
    reference.getCurrentActiveArrayFormulaRange(),
  ])
    for (const byColumn of Object.values<Record<number, IRange>>((ranges ?? {}) as never))
      for (const range of Object.values(byColumn)) if (holdsCell(range, row, column)) return range;
  return undefined;
}
