/** Formulas that people type, put into the form that the grid understands; as written they are kept beside. */
import { type ICellData, ICommandService } from "@univerjs/core";
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from "@univerjs/sheets";
import { toGrid } from "../../engine/dialect";
import { type SpellOut, spellingOut, type Vocabulary } from "../../engine/spelled-out";
import { withTableNames } from "../../engine/structured";
import type { Carried } from "../book/grid-book";
import { namesOf } from "../book/read-grid";
import { type Grid, workbookOf } from "../grid/grid";
import { allTables } from "../tables/tables";

export function translateTyped(grid: Grid): void {
  grid.injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== SetRangeValuesMutation.id) return;
    const { subUnitId, cellValue } = command.params as ISetRangeValuesMutationParams;
    const sheet = workbookOf(grid)?.getSheetBySheetId(subUnitId)?.getName();
    if (sheet === undefined) return;
    let known: { readonly words: Vocabulary; readonly spellOut: SpellOut } | undefined;
    for (const [row, line] of Object.entries(cellValue ?? {}))
      for (const [column, cell] of Object.entries((line ?? {}) as Record<string, ICellData>)) {
        if (!cell?.f) continue;
        const written = cell.f.replace(/^=/, "");
        const place = { sheet, row: Number(row), column: Number(column) };
        known ??= meaningsOf(vocabularyOf(grid));
        const expanded = known.spellOut(written, place);
        cell.f = toGrid(expanded);
        if (expanded === written) continue;
        const formula = withTableNames(written, known.words.tables, place);
        cell.custom = { ...cell.custom, formula } satisfies Carried;
      }
  });
}

const meaningsOf = (words: Vocabulary) => ({ words, spellOut: spellingOut(words) });

/** What words in formulas stand for in the workbook as it stands. */
export const vocabularyOf = (grid: Grid): Vocabulary => ({
  definedNames: namesOf(grid),
  tables: allTables(grid),
});
