/**
 * Enter and Tab take from the list of functions only what was looked up for the word at the caret. The grid looks
 * up a word a while after it was typed: who types fast would get LET for LEN, and no answer.
 */
import type { Nullable } from "@univerjs/core";
import { type Editor, IEditorService } from "@univerjs/docs-ui";
import { IDescriptionService } from "@univerjs/sheets-formula";
import { IShortcutService, KeyCode } from "@univerjs/ui";
import type { Grid } from "./grid";

const OF_THE_LIST = "sheet.formula-embedding-editor.search_function.";

export function completeFreshWords({ injector }: Grid): void {
  const descriptions = injector.get(IDescriptionService);
  const shortcuts = injector.get(IShortcutService);
  let lookedUp = "";
  const search = descriptions.getSearchListByNameFirstLetter.bind(descriptions);
  descriptions.getSearchListByNameFirstLetter = (typed) => {
    lookedUp = typed;
    return search(typed);
  };
  const isFresh = () =>
    isSameWord(lookedUp, wordAtCaret(injector.get(IEditorService).getFocusEditor()));
  const register = shortcuts.registerShortcut.bind(shortcuts);
  shortcuts.registerShortcut = (item) => {
    const takes = item.binding === KeyCode.ENTER || item.binding === KeyCode.TAB;
    const isOfList = takes && item.id.startsWith(OF_THE_LIST);
    return register(isOfList ? { ...item, preconditions: isFresh } : item);
  };
}

const isSameWord = (one: string, other: string) => one.trim().toUpperCase() === other.toUpperCase();

function wordAtCaret(editor: Nullable<Readonly<Editor>>): string {
  const text = editor?.getDocumentData().body?.dataStream ?? "";
  const caret = editor?.getSelectionRanges()[0]?.startOffset ?? 0;
  return wordAt(text, caret);
}

/** The letters on both sides of a place. */
export function wordAt(text: string, place: number): string {
  const [before] = /[\p{L}\p{N}_.\\]*$/u.exec(text.slice(0, place)) ?? [""];
  const [after] = /^[\p{L}\p{N}_.\\]*/u.exec(text.slice(place)) ?? [""];
  return before + after;
}
