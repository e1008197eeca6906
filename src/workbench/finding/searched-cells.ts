import { FormulaDataModel } from "@univerjs/engine-formula";
import { readCells } from "../../engine/read-cells";
import { labelOf } from "../charts/shown-cells";
import { type Grid, workbookOf } from "../grid/grid";
import { patternAt, shownValue } from "../view/shown-value";
import type { SearchedCell } from "./matches";

/** The filled cells of all sheets that have a tab, as they are read. */
export function searchedCells(grid: Grid): SearchedCell[] {
  const model = grid.injector.get(FormulaDataModel);
  const cells: SearchedCell[] = [];
  for (const [sheet, worksheet] of (workbookOf(grid)?.getSheets() ?? []).entries()) {
    if (worksheet.isSheetHidden()) continue;
    const sheetId = worksheet.getSheetId();
    for (const [row, line] of readCells(model, worksheet)) {
      const rowHidden = !worksheet.getRowVisible(row);
      for (const [column, { value, formula }] of line) {
        if (value === null || value === "") continue;
        const format =
          typeof value === "number" ? patternAt(grid, worksheet, row, column) : undefined;
        const texts = new Set([labelOf({ value, format }), shownValue(value, format)]);
        cells.push({
          sheet,
          place: { sheetId, row, column },
          texts: [...texts],
          ...(formula !== undefined && { formula: `=${formula}` }),
          hidden: rowHidden || !worksheet.getColVisible(column),
        });
      }
    }
  }
  return cells;
}
