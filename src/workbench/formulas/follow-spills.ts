/**
 * Computes again what reads a spilled range that changed, as the engine without a screen does, and what has
 * room for its answer only now.
 */
import {
  FormulaDataModel,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import { MOST_PASSES } from "../../engine/calculate";
import { SpillWatch } from "../../engine/spill-watch";
import { computeBelow } from "../grid/computed";
import { type Grid, workbookOf } from "../grid/grid";
import { AnswerRoom } from "../grid/make-room";

/** Tells when every formula of the grid has its value, after each change, and whether some read their own. */
export function followSpills(grid: Grid, settled: (circular: boolean) => void): void {
  const { injector, failures } = grid;
  const service = injector.get(ICalculateFormulaService);
  const model = injector.get(FormulaDataModel);
  let watch: SpillWatch | undefined;
  let watched: unknown;
  let passes = 0;
  let running = false;
  let circular = false;
  const runtime = injector.get(IFormulaRuntimeService);
  const room = new AnswerRoom(grid);

  service.executionInProgressListener$.subscribe(({ stage }) => {
    running = true;
    if (
      stage === FormulaExecuteStageType.START_DEPENDENCY ||
      stage === FormulaExecuteStageType.START_DEPENDENCY_ARRAY_FORMULA
    )
      failures.startRun();
  });
  service.executionCompleteListener$.subscribe(() => {
    running = false;
    circular ||= runtime.isCycleDependency();
    // The results are written, and whatever waits for the engine has started, by then.
    setTimeout(() => {
      const workbook = workbookOf(grid);
      if (running || !workbook) return;
      if (watched !== workbook)
        [watch, watched, passes] = [new SpillWatch(model, workbook), workbook, 0];
      const dirtyRanges = [...room.make(workbook), ...(watch?.changes() ?? [])];
      if (dirtyRanges.length > 0 && passes++ < MOST_PASSES) computeBelow(grid, dirtyRanges);
      else {
        settled(circular || dirtyRanges.length > 0);
        passes = 0;
        circular = false;
      }
    }, 0);
  });
}
