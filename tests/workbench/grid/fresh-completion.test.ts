import { IEditorService } from "@univerjs/docs-ui";
import { IDescriptionService } from "@univerjs/sheets-formula";
import { type IShortcutItem, KeyCode } from "@univerjs/ui";
import { describe, expect, test } from "vitest";
import { completeFreshWords, wordAt } from "../../../src/workbench/grid/fresh-completion";
import type { Grid } from "../../../src/workbench/grid/grid";

test.each([
  ["=LE", 3, "LE"],
  ["=LEN(A1)", 3, "LEN"],
  ["=LEN(A1)", 8, ""],
  ["=WETEND.DO+1", 10, "WETEND.DO"],
  ["=SUM(a_1;größe)", 14, "größe"],
  ["", 0, ""],
])("of %j, at %i: %j", (text, place, word) => {
  expect(wordAt(text, place)).toBe(word);
});

describe("the list", () => {
  /** The keys that the grid gives to its list, and whether they do something once this is typed. */
  function typed(text: string) {
    const descriptions = { getSearchListByNameFirstLetter: () => [] as unknown[] };
    const registered: IShortcutItem[] = [];
    const shortcuts = { registerShortcut: (item: IShortcutItem) => registered.push(item) };
    const focused = {
      getDocumentData: () => ({ body: { dataStream: `${text}\r\n` } }),
      getSelectionRanges: () => [{ startOffset: text.length }],
    };
    const services = new Map<unknown, unknown>([
      [IDescriptionService, descriptions],
      [IEditorService, { getFocusEditor: () => focused }],
    ]);
    const injector = { get: (service: unknown) => services.get(service) ?? shortcuts };
    completeFreshWords({ injector } as unknown as Grid);
    const id = "sheet.formula-embedding-editor.search_function.editor";
    for (const binding of [KeyCode.ENTER, KeyCode.TAB, KeyCode.ARROW_DOWN])
      shortcuts.registerShortcut({ id, binding, preconditions: () => true });
    (descriptions.getSearchListByNameFirstLetter as (word: string) => unknown)("le");
    return registered.map(({ preconditions }) => preconditions?.({} as never));
  }

  test("is taken from as long as its word is at the caret", () => {
    expect(typed("=1+LE")).toEqual([true, true, true]);
  });

  test.each(["=LEN", "=LE(", '=LEN("abc")', "="])("is passed over by %j", (text) => {
    expect(typed(text)).toEqual([false, false, true]);
  });
});
