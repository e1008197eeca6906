import type { Injector, IUnitRange, Workbook } from "@univerjs/core";
import type { FormulaDataModel, IAllRuntimeData } from "@univerjs/engine-formula";
import type { EngineFormula } from "./executor";
import type { Failures } from "./failures";
import { SpillWatch } from "./spill-watch";

/** A chain of formulas that read parts of one another's spilled answers, longer than this, is taken for a circle. */
export const MOST_PASSES = 100;

/**
 * Computes every formula of the workbook. One calculation of the engine follows spilled answers only a
 * step or two, so what reads a spilled range that changed is computed again until none changes. Gives
 * whether formulas read their own answers.
 */
export async function calculate(
  formula: EngineFormula,
  injector: Injector,
  workbook: Workbook,
  failures: Failures,
): Promise<boolean> {
  const model = injector.get(formula.FormulaDataModel);
  const watch = new SpillWatch(model, workbook);
  const runtime = injector.get(formula.IFormulaRuntimeService);
  let circular = false;
  const told = injector
    .get(formula.ICalculateFormulaService)
    .executionCompleteListener$.subscribe(() => {
      circular ||= runtime.isCycleDependency();
    });
  let changed: IUnitRange[] | undefined;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const result = await calculateOnce(formula, injector, model, failures, changed);
    keep(workbook, result);
    changed = watch.changes();
    if (changed.length === 0) break;
  }
  told.unsubscribe();
  return circular || (changed?.length ?? 0) > 0;
}

async function calculateOnce(
  formula: EngineFormula,
  injector: Injector,
  model: FormulaDataModel,
  failures: Failures,
  changed: IUnitRange[] | undefined,
): Promise<IAllRuntimeData> {
  const service = injector.get(formula.ICalculateFormulaService);
  const stages = service.executionInProgressListener$.subscribe(({ stage }) => {
    if (
      stage === formula.FormulaExecuteStageType.START_DEPENDENCY ||
      stage === formula.FormulaExecuteStageType.START_DEPENDENCY_ARRAY_FORMULA
    )
      failures.startRun();
  });
  const result = new Promise<IAllRuntimeData>((resolve) => {
    const complete = service.executionCompleteListener$.subscribe((data) => {
      complete.unsubscribe();
      resolve(data);
    });
  });
  await service.execute({
    formulaData: model.getFormulaData(),
    arrayFormulaCellData: model.getArrayFormulaCellData(),
    arrayFormulaRange: model.getArrayFormulaRange(),
    forceCalculate: changed === undefined,
    dirtyRanges: changed ?? [],
    dirtyNameMap: {},
    dirtyDefinedNameMap: {},
    dirtyUnitFeatureMap: {},
    dirtyUnitOtherFormulaMap: {},
  });
  const data = await result;
  stages.unsubscribe();
  return data;
}

/** Writes the results where the next pass, and whoever reads the workbook, finds them. */
function keep(workbook: Workbook, { unitData }: IAllRuntimeData): void {
  for (const [sheetId, results] of Object.entries(unitData[workbook.getUnitId()] ?? {})) {
    const cells = workbook.getSheetBySheetId(sheetId)?.getCellMatrix();
    results.forValue((row, column, result) => {
      const cell = cells?.getValue(row, column);
      if (cell?.f) cells?.setValue(row, column, { ...cell, v: result?.v, t: result?.t });
    });
  }
}
