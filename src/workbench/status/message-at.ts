import type { Workbook, Worksheet } from "@univerjs/core";
import * as formula from "@univerjs/engine-formula";
import { readCells } from "../../engine/read-cells";
import { Reasons } from "../../engine/reasons";
import { type Book, type GrowingCells, putCell, type Sheet } from "../../workbook/book";
import { namesOf } from "../book/read-grid";
import { type Grid, workbookOf } from "../grid/grid";

/** Why a cell shows an error, as far as that is known. */
export function messageAt(
  grid: Grid,
  worksheet: Worksheet,
  row: number,
  column: number,
  error: string,
): string | undefined {
  return reasonsIn(grid)?.of({ sheet: worksheet.getName(), row, column }, error);
}

/** The same for many cells: what the grid has computed is read once. */
export function reasonsIn(grid: Grid): Reasons | undefined {
  const workbook = workbookOf(grid);
  if (!workbook) return undefined;
  const sheetIdOf = (name: string) => workbook.getSheetBySheetName(name)?.getSheetId() ?? "";
  return new Reasons(formula, computedBook(grid, workbook), grid.failures, sheetIdOf);
}

/** What the grid has computed, without looks. Its formulas name no tables: they have ranges in their place. */
function computedBook(grid: Grid, workbook: Workbook): Book {
  const model = grid.injector.get(formula.FormulaDataModel);
  const sheets = workbook.getSheets().map((worksheet): Sheet => {
    const cells: GrowingCells = {};
    for (const [row, line] of readCells(model, worksheet))
      for (const [column, { data: _, from, ...cell }] of line)
        putCell(cells, row, column, from ? { ...cell, spilled: true } : cell);
    return { name: worksheet.getName(), cells };
  });
  return { sheets, definedNames: namesOf(grid), tables: [], styles: {} };
}
