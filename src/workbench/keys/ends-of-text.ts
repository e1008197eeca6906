/** Home and End in what is being typed: to its start and to its end. */
import { CommandType, ICommandService } from "@univerjs/core";
import { DocSelectionManagerService } from "@univerjs/docs";
import { IEditorService } from "@univerjs/docs-ui";
import { whenSheetEditorActivated } from "@univerjs/sheets-ui";
import type { Grid } from "../grid/grid";
import { textIn } from "../typing/both-editors";
import { END, HOME, leadBy, type Way } from "./shortcuts";

const GO_IN_TEXT = "dosewright.command.go-in-text";

type Place = "start" | "end";

export function goToEndsOfText({ injector }: Grid): void {
  injector.get(ICommandService).registerCommand({
    id: GO_IN_TEXT,
    type: CommandType.COMMAND,
    handler: (accessor, params?: object) => {
      const { to, extend } = params as Way<Place>;
      const selections = accessor.get(DocSelectionManagerService);
      const editor = accessor.get(IEditorService).getFocusEditor();
      const now = selections.getActiveTextRange();
      if (!editor || !now) return false;
      const unitId = editor.getEditorId();
      const end = to === "start" ? 0 : textIn(editor).length;
      const startOffset = Math.min(end, extend ? now.startOffset : end);
      const endOffset = Math.max(end, extend ? now.endOffset : end);
      const range = { startOffset, endOffset, collapsed: startOffset === endOffset };
      selections.replaceDocRanges([range], { unitId, subUnitId: unitId }, false);
      return true;
    },
  });
  const keys: [Place, number][] = [
    ["start", HOME],
    ["end", END],
  ];
  leadBy(injector, GO_IN_TEXT, keys, whenSheetEditorActivated);
}
