/** What the grid adds up of the selected cells: days are no sum, and days and numbers together have no mean. */
import { numfmt } from "@univerjs/core";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { IStatusBarService } from "@univerjs/sheets-ui";
import { type Grid, workbookOf } from "../grid/grid";
import { valueAt } from "../grid/seen-cells";
import { patternAt } from "../view/shown-value";

type State = NonNullable<Parameters<IStatusBarService["setState"]>[0]>;

const MEASURES: readonly unknown[] = ["SUM", "AVERAGE", "MIN", "MAX"];

/** `formats` are those of the selected numbers. */
export function toldOf(state: State, formats: readonly (string | undefined)[]): State {
  const days = formats.filter(isDay);
  if (days.length === 0) return state;
  const senseless: readonly unknown[] = days.length === formats.length ? ["SUM"] : MEASURES;
  return {
    values: state.values.filter(({ func }) => !senseless.includes(func)),
    pattern: days.length < formats.length ? null : isDay(state.pattern) ? state.pattern : days[0],
  };
}

/** A time of day or a length of time is none: hours add up. */
function isDay(pattern: unknown): pattern is string {
  if (typeof pattern !== "string" || !numfmt.isDateFormat(pattern)) return false;
  const { year, month, day } = numfmt.getFormatDateInfo(pattern);
  return year || month || day;
}

export function sumUp(grid: Grid): void {
  const service = grid.injector.get(IStatusBarService);
  const set = service.setState.bind(service);
  service.setState = (state) => set(state && toldOf(state, selectedFormats(grid)));
}

/** The formats of the numbers in the selected cells that are not hidden. */
function selectedFormats(grid: Grid): (string | undefined)[] {
  const sheet = workbookOf(grid)?.getActiveSheet();
  const selections = grid.injector.get(SheetsSelectionsService).getCurrentSelections();
  if (!sheet) return [];
  const formats: (string | undefined)[] = [];
  for (const { range } of selections) {
    for (let row = range.startRow; row <= range.endRow; row++)
      if (sheet.getRowVisible(row))
        for (let column = range.startColumn; column <= range.endColumn; column++)
          if (typeof valueAt(grid, sheet, row, column) === "number")
            formats.push(patternAt(grid, sheet, row, column));
  }
  return formats;
}
