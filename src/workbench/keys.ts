/** Keys that reach the grid from beside it: undoing, and all of them after a press on a tab or a button; and saving. */
import { ICommandService, RedoCommand, UndoCommand } from "@univerjs/core";
import { ILayoutService } from "@univerjs/ui";
import type { Grid } from "./grid/grid";

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

/** From wherever it is pressed: the browser would save the page, without the workbook. */
export function saveByKeys(save: () => void): void {
  const pressed = (event: KeyboardEvent) => {
    const { ctrlKey, metaKey, altKey, shiftKey, key } = event;
    if (!(ctrlKey || metaKey) || altKey || shiftKey || key.toLowerCase() !== "s") return;
    event.preventDefault();
    if (!event.repeat) save();
  };
  addEventListener("keydown", pressed, { capture: true });
}

function wayOf({ ctrlKey, metaKey, altKey, shiftKey, key }: KeyboardEvent) {
  if (!(ctrlKey || metaKey) || altKey) return undefined;
  const letter = key.toLowerCase();
  if (letter === "z") return shiftKey ? RedoCommand : UndoCommand;
  return letter === "y" && !shiftKey ? RedoCommand : undefined;
}
