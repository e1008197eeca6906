/** A name of one sheet that is given, changed or taken away means the same in every formula at once. */
import { ICommandService } from "@univerjs/core";
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { spellingOut } from "../../engine/spelled-out";
import type { DefinedName } from "../../workbook/book";
import { belongsToSheet, namesOf } from "../book/read-grid";
import { type Grid, workbookOf } from "../grid/grid";
import type { CellData } from "../grid/one-step";
import { allTables } from "../tables/tables";
import { readAnew } from "./read-anew";

const naming: readonly string[] = [SetDefinedNameMutation.id, RemoveDefinedNameMutation.id];

export function followNames(grid: Grid): void {
  const commands = grid.injector.get(ICommandService);
  let before: readonly DefinedName[] | undefined;
  commands.beforeCommandExecuted(({ id }) => {
    if (!naming.includes(id) || before) return;
    before = namesOf(grid);
    const workbook = workbookOf(grid);
    // By then all names are set that go with this one, and the cells that moved along.
    queueMicrotask(() => {
      const names = before ?? [];
      before = undefined;
      if (workbookOf(grid) === workbook) readAllAnew(grid, names);
    });
  });
}

/** No step to undo: whoever takes back the change of the name comes by here again. */
function readAllAnew(grid: Grid, before: readonly DefinedName[]): void {
  const now = namesOf(grid);
  if (![...before, ...now].some(belongsToSheet)) return;
  const tables = allTables(grid);
  const meanings = {
    before: spellingOut({ definedNames: before, tables }),
    after: spellingOut({ definedNames: now, tables }),
    isNew: true,
  };
  for (const worksheet of workbookOf(grid)?.getSheets() ?? []) {
    const cellValue: CellData = {};
    readAnew(grid, worksheet, meanings, cellValue);
    if (Object.keys(cellValue).length === 0) continue;
    const params = { unitId: worksheet.getUnitId(), subUnitId: worksheet.getSheetId(), cellValue };
    grid.injector.get(ICommandService).syncExecuteCommand(SetRangeValuesMutation.id, params);
  }
}
