/**
 * Computes again what reads a spilled range that changed, as the engine without a screen does, and what has
 * room for its answer only now.
 */
import { type ICommandInfo, ICommandService, type IExecutionOptions } from "@univerjs/core";
import {
  FormulaDataModel,
  FormulaExecuteStageType,
  IActiveDirtyManagerService,
  ICalculateFormulaService,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import {
  ClearSelectionFormatCommand,
  type ISetRangeValuesMutationParams,
  SetBorderCommand,
  SetRangeValuesMutation,
  SetStyleCommand,
} from "@univerjs/sheets";
import { MOST_PASSES } from "../../engine/calculate";
import { SpillWatch } from "../../engine/spill-watch";
import { computeBelow } from "../grid/computed";
import { type Grid, workbookOf } from "../grid/grid";
import { AnswerRoom } from "../grid/make-room";

/** What `followSpills` tells. */
export interface Computing {
  /** That something was changed that formulas may read. */
  begun(): void;
  /** That every formula has its value, and whether some read their own. */
  settled(circular: boolean): void;
}

export function followSpills(grid: Grid, { begun, settled }: Computing): void {
  const { injector, failures } = grid;
  const service = injector.get(ICalculateFormulaService);
  const model = injector.get(FormulaDataModel);
  let watch: SpillWatch | undefined;
  let watched: unknown;
  let passes = 0;
  let running = false;
  let awaited = false;
  let circular = false;
  const runtime = injector.get(IFormulaRuntimeService);
  const room = new AnswerRoom(grid);

  watchChanges(grid, () => {
    awaited = true;
    begun();
  });
  service.executionInProgressListener$.subscribe(({ stage }) => {
    running = true;
    if (stage === FormulaExecuteStageType.START) awaited = false;
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
      if (running || awaited || !workbook) return;
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

const LOOKS: readonly unknown[] = [
  SetStyleCommand.id,
  SetBorderCommand.id,
  ClearSelectionFormatCommand.id,
];

/** Tells of what the grid will compute after, which it begins only a moment later. */
function watchChanges({ injector }: Grid, changed: () => void): void {
  const dirty = injector.get(IActiveDirtyManagerService);
  const isOfLooks = ({ id, params }: ICommandInfo, options?: IExecutionOptions) =>
    id === SetRangeValuesMutation.id &&
    (options?.onlyLocal === true ||
      LOOKS.includes((params as ISetRangeValuesMutationParams).trigger));
  injector.get(ICommandService).onCommandExecuted((command, options) => {
    if (dirty.get(command.id) && !isOfLooks(command, options)) changed();
  });
}
