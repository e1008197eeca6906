import { ICommandService, type IUnitRange } from "@univerjs/core";
import { SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import type { Grid } from "./grid";

/** Tells whoever waits that every formula of the grid has its value. */
export class Computed {
  readonly #listeners = new Set<() => void>();
  #isSettled = false;

  /** A cell has changed that formulas may read. */
  begin(): void {
    this.#isSettled = false;
  }

  tell(): void {
    this.#isSettled = true;
    for (const listener of [...this.#listeners]) listener();
  }

  watch(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  /** At once where nothing has changed since. */
  async settled(): Promise<void> {
    if (!this.#isSettled) await this.next();
  }

  next(): Promise<void> {
    return new Promise((resolve) => {
      const stop = this.watch(() => {
        stop();
        resolve();
      });
    });
  }
}

/** Computes every formula of the workbook, whether or not something changed. */
export const computeAll = (grid: Grid): void => start(grid, true, []);

/** Computes what reads these cells. */
export const computeBelow = (grid: Grid, dirtyRanges: IUnitRange[]): void =>
  start(grid, false, dirtyRanges);

const start = ({ injector }: Grid, forceCalculation: boolean, dirtyRanges: IUnitRange[]): void =>
  void injector.get(ICommandService).executeCommand(
    SetFormulaCalculationStartMutation.id,
    {
      forceCalculation,
      dirtyRanges,
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtySuperTableMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
      clearDependencyTreeCache: {},
    },
    { onlyLocal: true },
  );
