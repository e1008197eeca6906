import { IEditorBridgeService } from "@univerjs/sheets-ui";
import type { Grid } from "./grid";

export const isEditing = ({ injector }: Grid): boolean =>
  injector.get(IEditorBridgeService).isVisible().visible;

/** What is being typed would be lost, or written over what we write. */
export const WHILE_EDITING =
  "A cell is being edited. Press Enter or Esc in the sheet, then try again.";
