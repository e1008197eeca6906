import { ICommandService } from "@univerjs/core";
import { SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import type { Grid } from "./grid";

/** Tells whoever waits that every formula of the grid has its value. */
export class Computed {
  readonly #listeners = new Set<() => void>();

  tell(): void {
    for (const listener of [...this.#listeners]) listener();
  }

  watch(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
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
export const computeAll = ({ injector }: Grid): void =>
  void injector.get(ICommandService).executeCommand(
    SetFormulaCalculationStartMutation.id,
    {
      forceCalculation: true,
      dirtyRanges: [],
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtySuperTableMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
      clearDependencyTreeCache: {},
    },
    { onlyLocal: true },
  );
