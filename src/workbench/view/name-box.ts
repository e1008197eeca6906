/**
 * Where a person goes by the name box: to cells of any sheet, and to whole columns and rows, which the grid
 * leaves without an end, and then neither adds up nor clears.
 */
import type { IRange, ISelection, Worksheet } from "@univerjs/core";
import {
  deserializeRangeWithSheet,
  isReferenceStringWithEffectiveColumn,
} from "@univerjs/engine-formula";
import { getPrimaryForRange, SheetsSelectionsService } from "@univerjs/sheets";
import { ILayoutService } from "@univerjs/ui";
import { placeOf } from "../../host/place";
import { selectedPlace } from "../entries/entry-check";
import { type Grid, workbookOf } from "../grid/grid";
import type { Said } from "../status/status";

export function widenNameBox(grid: Grid, container: HTMLElement, tell: (said: Said) => void): void {
  endSelections(grid);
  container.addEventListener(
    "keydown",
    (event) => {
      const box = event.target as HTMLInputElement;
      if (event.key !== "Enter" || !box.matches('[data-u-comp="defined-name"] input')) return;
      const { sheet, cells } = placeOf(box.value.trim());
      // The grid takes an address on whatever sheet is shown, and knows the names.
      if (sheet === "" || !isReferenceStringWithEffectiveColumn(cells)) return;
      event.stopPropagation();
      const place = selectedPlace(grid);
      if (goTo(grid, sheet, cells)) grid.injector.get(ILayoutService).focus();
      else if (place) tell({ place, text: `There is no sheet with the name ${sheet}.` });
    },
    { capture: true },
  );
}

/** Gives whether the sheet is there. */
function goTo({ api, injector }: Grid, name: string, cells: string): boolean {
  const sheet = workbookOf({ injector })
    ?.getSheets()
    .find((one) => one.getName().toLowerCase() === name.toLowerCase());
  const book = api.getActiveWorkbook();
  const target = sheet && book?.getSheetBySheetId(sheet.getSheetId());
  if (!sheet || !book || !target) return false;
  const range = ended(deserializeRangeWithSheet(cells).range, sheet);
  book.setActiveSheet(target);
  target.getRange(range).activate();
  target.scrollToCell(range.startRow, range.startColumn);
  return true;
}

function endSelections({ injector }: Grid): void {
  const service = injector.get(SheetsSelectionsService);
  const set = service.setSelections.bind(service) as (...all: unknown[]) => void;
  service.setSelections = (...all: unknown[]) => {
    const book = workbookOf({ injector });
    const sheet =
      (typeof all[1] === "string" && book?.getSheetBySheetId(all[1])) || book?.getActiveSheet();
    set(
      ...all.map((one) =>
        Array.isArray(one) && sheet ? one.map((its) => endedIn(its, sheet)) : one,
      ),
    );
  };
}

function endedIn(selection: ISelection, sheet: Worksheet): ISelection {
  const range = ended(selection.range, sheet);
  const isWhole =
    range.endRow !== selection.range.endRow || range.endColumn !== selection.range.endColumn;
  return isWhole ? { ...selection, range, primary: getPrimaryForRange(range, sheet) } : selection;
}

function ended(range: IRange, sheet: Worksheet): IRange {
  return {
    ...range,
    startRow: range.startRow || 0,
    startColumn: range.startColumn || 0,
    endRow: Number.isNaN(range.endRow) ? sheet.getRowCount() - 1 : range.endRow,
    endColumn: Number.isNaN(range.endColumn) ? sheet.getColumnCount() - 1 : range.endColumn,
  };
}
