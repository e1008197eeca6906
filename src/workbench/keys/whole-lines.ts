/** Shift and the space bar select the rows of what is selected, Ctrl and the space bar its columns: the grid would type a space. */
import { CommandType, ICommandService, RANGE_TYPE } from "@univerjs/core";
import {
  SelectionMoveType,
  SetSelectionsOperation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { whenSheetEditorFocused } from "@univerjs/sheets-ui";
import { IShortcutService, KeyCode, MetaKeys } from "@univerjs/ui";
import { type Grid, workbookOf } from "../grid/grid";

const SELECT_LINES = "dosewright.command.select-lines";

interface Asked {
  readonly of: "rows" | "columns";
}

export function selectWholeLines(grid: Grid): void {
  const { injector } = grid;
  const commands = injector.get(ICommandService);
  commands.registerCommand({
    id: SELECT_LINES,
    type: CommandType.COMMAND,
    handler: (_, params?: object) => {
      const worksheet = workbookOf(grid)?.getActiveSheet();
      const selections = injector.get(SheetsSelectionsService).getCurrentSelections();
      if (!worksheet || selections.length === 0) return false;
      const whole =
        (params as Asked).of === "rows"
          ? { startColumn: 0, endColumn: worksheet.getColumnCount() - 1, rangeType: RANGE_TYPE.ROW }
          : { startRow: 0, endRow: worksheet.getRowCount() - 1, rangeType: RANGE_TYPE.COLUMN };
      return commands.syncExecuteCommand(SetSelectionsOperation.id, {
        unitId: worksheet.getUnitId(),
        subUnitId: worksheet.getSheetId(),
        type: SelectionMoveType.MOVE_END,
        selections: selections.map((one) => ({ ...one, range: { ...one.range, ...whole } })),
      });
    },
  });
  const shortcuts = injector.get(IShortcutService);
  const keys = { rows: MetaKeys.SHIFT, columns: MetaKeys.CTRL_COMMAND };
  for (const of of ["rows", "columns"] as const)
    shortcuts.registerShortcut({
      id: SELECT_LINES,
      binding: (KeyCode.SPACE | keys[of]) as KeyCode,
      preconditions: whenSheetEditorFocused,
      staticParameters: { of } satisfies Asked,
    });
}
