/** The sheet around the selected cell, as those see it who look for the rows that a person means. */
import type { Workbook, Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { SheetsSelectionsService } from "@univerjs/sheets";
import type { CellPlace } from "../../engine/cell-place";
import { areaOf } from "../../engine/ranges";
import { type ReadCell, readCells } from "../../engine/read-cells";
import type { Area } from "../../workbook/book";
import { selectedPlace } from "../entries/entry-check";
import { type Grid, workbookOf } from "../grid/grid";
import { tablesOn } from "../tables/tables";
import type { SeenSheet } from "./block";

export interface AroundCell {
  readonly workbook: Workbook;
  readonly worksheet: Worksheet;
  readonly place: CellPlace;
  readonly selected: Area;
  readonly cells: ReadonlyMap<number, ReadonlyMap<number, ReadCell>>;
  readonly sheet: SeenSheet;
}

/** Undefined where no cell is selected. */
export function aroundCell(grid: Grid): AroundCell | undefined {
  const { injector } = grid;
  const workbook = workbookOf(grid);
  const worksheet = workbook?.getActiveSheet();
  const place = selectedPlace(grid);
  const range = injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range;
  if (!workbook || !worksheet || !place || !range) return undefined;
  const cells = readCells(injector.get(FormulaDataModel), worksheet);
  const isBold = (row: number, column: number) =>
    workbook.getStyles().getStyleByCell(worksheet.getCellRaw(row, column))?.bl === 1;
  const sheet: SeenSheet = {
    name: worksheet.getName(),
    cells,
    tables: tablesOn(grid, worksheet),
    frozenRows: worksheet.getFreeze().ySplit,
    isBold,
  };
  return { workbook, worksheet, place, selected: areaOf(range), cells, sheet };
}
