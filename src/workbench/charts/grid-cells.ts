import type { Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { areaOf } from "../../engine/ranges";
import { spilledRanges } from "../../engine/read-cells";
import { type Grid, workbookOf } from "../grid/grid";
import { valueAt } from "../grid/seen-cells";
import type { ShownCells } from "./shown-cells";

/** The cells of the grid, as charts see them. */
export function cellsOfGrid(grid: Grid): ShownCells {
  const workbook = workbookOf(grid);
  const model = grid.injector.get(FormulaDataModel);
  const sheetNamed = (name: string): Worksheet | undefined =>
    workbook?.getSheetBySheetName(name) ?? undefined;
  return {
    at(sheet, row, column) {
      const worksheet = sheetNamed(sheet);
      if (!workbook || !worksheet) return { value: null };
      const data = worksheet.getCellRaw(row, column);
      const format = workbook.getStyles().getStyleByCell(data)?.n?.pattern;
      return { value: valueAt(grid, worksheet, row, column), format };
    },
    isHidden(sheet, row, column) {
      const worksheet = sheetNamed(sheet);
      return worksheet ? !worksheet.getRowVisible(row) || !worksheet.getColVisible(column) : false;
    },
    spillAt(sheet, row, column) {
      const worksheet = sheetNamed(sheet);
      const range =
        worksheet &&
        spilledRanges(model, worksheet).find(
          ({ startRow, startColumn }) => startRow === row && startColumn === column,
        );
      return range && areaOf(range);
    },
  };
}
