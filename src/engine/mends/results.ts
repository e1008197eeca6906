import type { ICellData, Injector } from "@univerjs/core";
import type { FunctionVariantType } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";

const NUMBER = 2;

/** The part of the engine's runtime that turns an answer into a cell; its types call it private. */
interface Results {
  _getValueObjectOfRuntimeData(variant: FunctionVariantType | null): ICellData;
}

/**
 * What a formula may leave in a cell: the blank that it read is shown as 0, and no zero has a sign,
 * neither in a cell nor in what divides by it.
 */
export function mendResults(injector: Injector, formula: EngineFormula): void {
  const results = injector.get(formula.IFormulaRuntimeService) as unknown as Results;
  if (typeof results._getValueObjectOfRuntimeData !== "function")
    throw new Error("The grid's engine keeps its answers in another way: see mends/results.");
  const kept = results._getValueObjectOfRuntimeData.bind(results);
  results._getValueObjectOfRuntimeData = (variant) => {
    const cell = kept(variant);
    return cell.v === null || cell.v === 0 ? { ...cell, v: 0, t: cell.t ?? NUMBER } : cell;
  };
}
