/** Home and End in what is being typed: to its start and to its end; with Shift what lies between is selected. */
import { CommandType, ICommandService } from "@univerjs/core";
import { DocSelectionManagerService } from "@univerjs/docs";
import { IEditorService } from "@univerjs/docs-ui";
import { whenSheetEditorActivated } from "@univerjs/sheets-ui";
import { IShortcutService, type KeyCode, MetaKeys } from "@univerjs/ui";
import type { Grid } from "../grid/grid";
import { textIn } from "./both-editors";

const GO_IN_TEXT = "dosewright.command.go-in-text";

/** As browsers number them; the grid's list leaves them out. */
const keys = [
  ["end", 35],
  ["start", 36],
] as const;

interface Asked {
  readonly to: "start" | "end";
  readonly extend: boolean;
}

export function goToEndsOfText({ injector }: Grid): void {
  injector.get(ICommandService).registerCommand({
    id: GO_IN_TEXT,
    type: CommandType.COMMAND,
    handler: (accessor, params?: object) => {
      const { to, extend } = params as Asked;
      const selections = accessor.get(DocSelectionManagerService);
      const editor = accessor.get(IEditorService).getFocusEditor();
      const now = selections.getActiveTextRange();
      if (!editor || !now) return false;
      const unitId = editor.getEditorId();
      const end = to === "start" ? 0 : textIn(editor).length;
      const [from, till] = !extend ? [end, end] : to === "start" ? [0, now.endOffset] : [now.startOffset, end]; // biome-ignore format: cases
      const range = { startOffset: from, endOffset: till, collapsed: from === till };
      selections.replaceDocRanges([range], { unitId, subUnitId: unitId }, false);
      return true;
    },
  });
  const shortcuts = injector.get(IShortcutService);
  for (const [to, key] of keys)
    for (const [extend, meta] of [[false, 0], [true, MetaKeys.SHIFT]] as const) // biome-ignore format: pairs
      shortcuts.registerShortcut({
        id: GO_IN_TEXT,
        binding: (key | meta) as KeyCode,
        preconditions: whenSheetEditorActivated,
        staticParameters: { to, extend } satisfies Asked,
      });
}
