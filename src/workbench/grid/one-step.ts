/** Cells, and whatever goes with them, written as one step to undo. */
import {
  type ICellData,
  ICommandService,
  type IMutationInfo,
  type IUndoRedoItem,
  IUndoRedoService,
  type Workbook,
} from "@univerjs/core";
import {
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  SetStyleCommand,
} from "@univerjs/sheets";
import type { Grid } from "./grid";

export type CellData = Record<number, Record<number, ICellData>>;

export interface Step {
  readonly todo: IMutationInfo;
  readonly undo: IMutationInfo;
}

interface Beside {
  readonly steps?: readonly Step[];
  /** The grid computes nothing anew after what changes looks only. */
  readonly looksOnly?: boolean;
  /** The step that was just done, where it is undone with this one. */
  readonly with?: IUndoRedoItem;
}

/** The cells by the id of their sheet. */
export function writeAsOneStep(
  { injector }: Grid,
  workbook: Workbook,
  cells: ReadonlyMap<string, CellData>,
  { steps: beside = [], looksOnly = false, with: done }: Beside = {},
): void {
  const id = SetRangeValuesMutation.id;
  const unitId = workbook.getUnitId();
  const written = [...cells].map(([subUnitId, cellValue]): Step => {
    const trigger = looksOnly ? SetStyleCommand.id : undefined;
    const params = { unitId, subUnitId, cellValue, ...(trigger && { trigger }) };
    return {
      todo: { id, params },
      undo: { id, params: SetRangeValuesUndoMutationFactory(injector, params) },
    };
  });
  const steps = [...written, ...beside];
  // What is carried out may be changed by those who hear of it.
  const redoMutations = structuredClone(steps.map(({ todo }) => todo));
  const commands = injector.get(ICommandService);
  for (const { todo } of steps) commands.syncExecuteCommand(todo.id, todo.params);
  const undoMutations = steps.map(({ undo }) => undo);
  if (done) {
    done.undoMutations.unshift(...undoMutations);
    done.redoMutations.push(...redoMutations);
  } else
    injector.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, undoMutations, redoMutations });
}

/** What is carried out meanwhile, a step to undo each, becomes one. */
export function asOneStep({ injector }: Pick<Grid, "injector">, carryOut: () => void): void {
  const list = injector.get(IUndoRedoService);
  const push = list.pushUndoRedo;
  const steps: IUndoRedoItem[] = [];
  // The grid's list stands behind a proxy, by which an assignment would be lost.
  const pushBy = (value: typeof push) =>
    Object.defineProperty(list, "pushUndoRedo", { value, configurable: true });
  pushBy((step) => void steps.push(step));
  try {
    carryOut();
  } finally {
    pushBy(push);
  }
  const [first] = steps;
  if (!first) return;
  list.pushUndoRedo({
    ...first,
    undoMutations: steps.toReversed().flatMap(({ undoMutations }) => undoMutations),
    redoMutations: steps.flatMap(({ redoMutations }) => redoMutations),
  });
}
