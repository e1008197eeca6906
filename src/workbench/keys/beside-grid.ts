/** Keys that reach the grid from beside it: undoing, and all of them after a press on a tab or a button; and saving and finding. */
import { ICommandService, RedoCommand, UndoCommand } from "@univerjs/core";
import { ILayoutService } from "@univerjs/ui";
import type { Grid } from "../grid/grid";

/** Where a person types, or answers a question, undoing is not the grid's; its own cells are such a place. */
const OWN_UNDO =
  "input, textarea, select, [contenteditable=true], [role=dialog], [role=alertdialog]";

/** Pressed by mouse or finger, they are done with; reached by keys, the next key is theirs, too. */
const GIVES_BACK = "main [role=tab], main > footer button, nav > button";

export function keepKeys({ injector }: Grid): void {
  addEventListener("keydown", (event) => {
    const command = wayOf(event);
    if (!command || (event.target as Element).closest?.(OWN_UNDO)) return;
    event.preventDefault();
    void injector.get(ICommandService).executeCommand(command.id);
  });
  const giveBack = () => injector.get(ILayoutService).focus();
  addEventListener("click", ({ detail, target }) => {
    const pressed = detail > 0 && (target as Element).closest(GIVES_BACK);
    // A tab that is pressed twice is being renamed.
    if (pressed && !pressed.querySelector("[contenteditable=true]")) giveBack();
  });
  let pointerId = 0;
  addEventListener("pointerup", (event) => (pointerId = event.pointerId), { capture: true });
  const renamed = ({ target }: FocusEvent) => {
    const name = target as Element;
    if (!name.matches?.("main [role=tab] *")) return;
    setTimeout(() => {
      // Named at once, a tab would be taken for pressed ever since, and be torn out of its row to be moved.
      if (!name.matches("[contenteditable=true]"))
        name.dispatchEvent(new PointerEvent("pointerup", { pointerId, bubbles: true }));
      // A name that cannot be is asked for again.
      if (document.activeElement === document.body) giveBack();
    }, 0);
  };
  addEventListener("focusout", renamed, { capture: true });
}

/** What Ctrl and a letter do. */
export type PageKeys = Readonly<Record<"s" | "f", () => void>>;

/** Keys for what the browser would do to the page, without the workbook. In the pane they are the browser's, but for saving. */
export function takePageKeys(ways: PageKeys): void {
  const pressed = (event: KeyboardEvent) => {
    const { ctrlKey, metaKey, altKey, shiftKey, target } = event;
    if (!(ctrlKey || metaKey) || altKey || shiftKey) return;
    const key = event.key.toLowerCase();
    const isInPane = (target as Element).closest?.("#pane") != null;
    if (key !== "s" && (key !== "f" || isInPane)) return;
    event.preventDefault();
    event.stopPropagation();
    if (!event.repeat) ways[key]();
  };
  addEventListener("keydown", pressed, { capture: true });
}

function wayOf({ ctrlKey, metaKey, altKey, shiftKey, key }: KeyboardEvent) {
  if (!(ctrlKey || metaKey) || altKey) return undefined;
  const letter = key.toLowerCase();
  if (letter === "z") return shiftKey ? RedoCommand : UndoCommand;
  return letter === "y" && !shiftKey ? RedoCommand : undefined;
}
