/**
 * Entries that a cell does not take: the old value comes back, and the plan's own words say what is asked for.
 * Where a rule only warns, the entry stands, and its words are told.
 */
import { SheetInterceptorService, VALIDATE_CELL } from "@univerjs/sheets";
import { SheetsDataValidationValidatorService } from "@univerjs/sheets-data-validation";
import type { CellPlace } from "../../engine/cell-place";
import { readValue } from "../../engine/read-cells";
import { addressOf } from "../../workbook/address";
import type { Computed } from "../grid/computed";
import type { Grid } from "../grid/grid";
import type { Said } from "../status/status";
import { patternAt, shownValue } from "../view/shown-value";
import { type Breach, breachOf, patience, selectedPlace } from "./entry-check";

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
      const breach = await Promise.race([breachOf(grid, place, value), patience()]);
      const entry = entered?.f ?? shownValue(value, patternAt(grid, worksheet, row, col));
      const accepted = breach?.mild ?? true;
      // Once the old value is back, or the next cell is selected.
      setTimeout(() => told(breach && saidOf(grid, place, breach, entry)), 0);
      return (await next(Promise.resolve(accepted))) ?? accepted;
    },
  });
}

function saidOf(grid: Grid, place: CellPlace, { sentence, mild }: Breach, entry: string): Said {
  if (!mild) return { place, text: `Not taken: ${entry}. ${sentence}` };
  const address = addressOf(place.row, place.column);
  const text = `Taken all the same, in ${address}: ${entry}. ${sentence}`;
  return { place: selectedPlace(grid) ?? place, text, mild };
}
