/** Entries that a cell does not take: the old value comes back, and the plan's own words say what is asked for. */
import { SheetInterceptorService, VALIDATE_CELL } from "@univerjs/sheets";
import { SheetsDataValidationValidatorService } from "@univerjs/sheets-data-validation";
import { readValue } from "../../engine/read-cells";
import type { Computed } from "../grid/computed";
import type { Grid } from "../grid/grid";
import type { Said } from "../status/status";
import { patternAt, shownValue } from "../view/shown-value";
import { patience, refusalOf } from "./entry-check";

export function refuseEntries(
  grid: Grid,
  computed: Computed,
  told: (refused: Said | undefined) => void,
): void {
  // The package would try every cell of every rule; here an entry is tried when it is made.
  grid.injector.get(SheetsDataValidationValidatorService).dispose();
  const { writeCellInterceptor } = grid.injector.get(SheetInterceptorService);
  writeCellInterceptor.intercept(VALIDATE_CELL, {
    handler: async (before, { worksheet, row, col, subUnitId }, next) => {
      if ((await before) === false) return false;
      const place = { sheetId: subUnitId, row, column: col };
      const entered = worksheet.getCellRaw(row, col);
      if (entered?.f ?? entered?.si) await Promise.race([computed.next(), patience()]);
      const value = readValue(worksheet.getCellRaw(row, col));
      const sentence = await Promise.race([refusalOf(grid, place, value), patience()]);
      const entry = entered?.f ?? shownValue(value, patternAt(grid, worksheet, row, col));
      // Once the old value is back.
      const text = sentence && `Not taken: ${entry}. ${sentence}`;
      setTimeout(() => told(text ? { place, text } : undefined), 0);
      const accepted = sentence === undefined;
      return (await next(Promise.resolve(accepted))) ?? accepted;
    },
  });
}
