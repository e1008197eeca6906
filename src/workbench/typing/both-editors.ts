/**
 * A formula that is being written stands in its cell and in the formula bar. What F4 makes of one of them the grid does
 * not tell the other: what is typed next came to wrong places there.
 */
import {
  DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY as BAR,
  DOCS_NORMAL_EDITOR_UNIT_ID_KEY as CELL,
} from "@univerjs/core";
import { type Editor, IEditorService } from "@univerjs/docs-ui";
import { ReferenceAbsoluteOperation } from "@univerjs/sheets-formula-ui";

export const isFormulaEditor = (editor: Readonly<Editor>): boolean =>
  [BAR, CELL].includes(editor.getEditorId());

/** Without the end of its only line. */
export const textIn = (editor: Readonly<Editor>): string =>
  editor.getDocumentData().body?.dataStream.slice(0, -2) ?? "";

export function tellOtherEditor(): void {
  const { handler } = ReferenceAbsoluteOperation;
  ReferenceAbsoluteOperation.handler = (accessor, params) => {
    const editors = accessor.get(IEditorService);
    const done = handler(accessor, params);
    const editor = editors.getFocusEditor();
    const other = editor && editors.getEditor(editor.getEditorId() === CELL ? BAR : CELL);
    if (editor && other && isFormulaEditor(editor) && textIn(editor) !== textIn(other))
      other.replaceText(textIn(editor), false);
    return done;
  };
}
