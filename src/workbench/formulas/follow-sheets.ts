/** Computes everything anew when a sheet comes or goes: the grid leaves blank what reads a sheet that is gone. */
import { ICommandService } from "@univerjs/core";
import { InsertSheetMutation, RemoveSheetMutation } from "@univerjs/sheets";
import { computeAll } from "../grid/computed";
import type { Grid } from "../grid/grid";

export function followSheets(grid: Grid): void {
  let isWaiting = false;
  grid.injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (isWaiting || (id !== InsertSheetMutation.id && id !== RemoveSheetMutation.id)) return;
    isWaiting = true;
    // A command that adds sheets, or takes one away, writes formulas behind it.
    setTimeout(() => {
      isWaiting = false;
      computeAll(grid);
    }, 0);
  });
}
