import { ICommandService } from "@univerjs/core";
import { DeviceInputEventType } from "@univerjs/engine-render";
import { IEditorBridgeService, SetCellEditVisibleOperation } from "@univerjs/sheets-ui";
import { type Grid, workbookOf } from "./grid";

export const isEditing = ({ injector }: Grid): boolean =>
  injector.get(IEditorBridgeService).isVisible().visible;

/** Takes what is being typed as an entry; the cell stays selected. */
export async function endEditing(grid: Grid): Promise<void> {
  const unitId = workbookOf(grid)?.getUnitId();
  if (unitId === undefined || !isEditing(grid)) return;
  grid.injector.get(ICommandService).syncExecuteCommand(SetCellEditVisibleOperation.id, {
    visible: false,
    eventType: DeviceInputEventType.PointerDown,
    unitId,
  });
  // The grid takes the entry behind its back, not with the command.
  await new Promise((resolve) => setTimeout(resolve, 0));
}

/** What is being typed would be lost, or written over what we write. */
export const WHILE_EDITING =
  "A cell is being edited. Press Enter or Esc in the sheet, then try again.";
