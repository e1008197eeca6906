/** Formulas that people type, put into the form that the grid understands; as written they are kept beside. */
import { type ICellData, ICommandService, type Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from "@univerjs/sheets";
import { toGrid } from "../../engine/dialect";
import { readCells } from "../../engine/read-cells";
import { type SpellOut, spellingOut, type Vocabulary } from "../../engine/spelled-out";
import type { Table } from "../../workbook/book";
import type { Carried } from "../book/grid-book";
import { belongsToSheet, namesOf, tablesIn } from "../book/read-grid";
import { type Grid, workbookOf } from "../grid/grid";

export function translateTyped(grid: Grid): void {
  grid.injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== SetRangeValuesMutation.id) return;
    const { subUnitId, cellValue } = command.params as ISetRangeValuesMutationParams;
    const sheet = workbookOf(grid)?.getSheetBySheetId(subUnitId)?.getName();
    if (sheet === undefined) return;
    // Tables are looked for, which takes reading all cells, only where one may be meant.
    let spellOut: SpellOut | undefined;
    let hasLocalNames: boolean | undefined;
    for (const [row, line] of Object.entries(cellValue ?? {}))
      for (const [column, cell] of Object.entries((line ?? {}) as Record<string, ICellData>)) {
        if (!cell?.f) continue;
        const written = cell.f.replace(/^=/, "");
        hasLocalNames ??= namesOf(grid).some(belongsToSheet);
        const place = { sheet, row: Number(row), column: Number(column) };
        if (hasLocalNames || /[[\]]/.test(written)) spellOut ??= spellingOut(vocabularyOf(grid));
        const expanded = spellOut?.(written, place) ?? written;

        cell.f = toGrid(expanded);
        if (expanded !== written)
          cell.custom = { ...cell.custom, formula: written } satisfies Carried;
      }
  });
}

/** What words in formulas stand for in the workbook as it stands. */
export const vocabularyOf = (grid: Grid): Vocabulary => ({
  definedNames: namesOf(grid),
  tables: allTables(grid),
});

/** The tables of the workbook as it stands. */
export function allTables(grid: Grid): Table[] {
  const model = grid.injector.get(FormulaDataModel);
  const sheets = workbookOf(grid)?.getSheets() ?? [];
  return tablesIn(sheets.map((worksheet) => ({ worksheet, cells: readCells(model, worksheet) })));
}

export const tablesOn = (grid: Grid, sheet: Worksheet): Table[] =>
  allTables(grid).filter((table) => table.sheet === sheet.getName());
