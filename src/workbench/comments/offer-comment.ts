/** Comments where people look for them: in the page's own row of buttons, and in the menu of cells. */
import { CommandType, ICommandService } from "@univerjs/core";
import { SheetsRenderService } from "@univerjs/sheets-ui";
import {
  ContextMenuGroup,
  ContextMenuPosition,
  ILayoutService,
  IMenuManagerService,
  MenuItemType,
} from "@univerjs/ui";
import { keyOfPlace } from "../../engine/cell-place";
import { addressOf } from "../../workbook/address";
import { openBelow } from "../drop-down";
import { element } from "../element";
import { type FollowedComments, SET_COMMENTS } from "../following/comments";
import { type Grid, workbookOf } from "../grid/grid";
import { commentWords } from "../view/comments";
import { type Commentable, commentable, setComment } from "./set-comment";
import "./comments.css";

const COMMENT = "dosewright.command.comment";

interface Actions {
  /** Gives why it did not, where it did not. */
  set(text: string): string | undefined;
  cancel(): void;
  typed(text: string): void;
}

export function offerComments(
  grid: Grid,
  comments: FollowedComments,
  menu: HTMLDetailsElement,
): void {
  const { injector } = grid;
  injector.get(SheetsRenderService).registerSkeletonChangingMutations(SET_COMMENTS);
  injector.get(ICommandService).registerCommand({
    id: COMMENT,
    type: CommandType.COMMAND,
    handler: () => {
      menu.open = true;
      return true;
    },
  });
  const item = { id: COMMENT, type: MenuItemType.BUTTON, title: "dosewright.comment" };
  injector.get(IMenuManagerService).mergeMenu({
    [ContextMenuPosition.MAIN_AREA]: {
      [ContextMenuGroup.DATA]: { [COMMENT]: { order: 2, menuItemFactory: () => item } },
    },
  });

  // A press beside the panel closes it: what was typed is there when it opens again.
  let draft: { readonly at: string; readonly text: string } | undefined;
  openBelow(menu, (close) => {
    const found = commentable(grid, comments);
    if (typeof found === "string") return element("div", {}, element("p", {}, found));
    const { place, comment } = found;
    const at = `${workbookOf(grid)?.getUnitId()} ${keyOfPlace(place)}`;
    const done = () => {
      draft = undefined;
      close();
      injector.get(ILayoutService).focus();
    };
    const text = draft?.at === at ? draft.text : comment ? commentWords(comment).text : "";
    return commentPanel(found, text, {
      set: (text) => {
        const refused = setComment(grid, comments, place, text);
        if (refused === undefined) done();
        return refused;
      },
      cancel: done,
      typed: (text) => {
        draft = { at, text };
      },
    });
  });
}

function commentPanel({ place, comment }: Commentable, text: string, actions: Actions) {
  const field = element("textarea", { rows: 5, value: text });
  const refusal = element("p", { className: "refusal" });
  refusal.setAttribute("role", "alert");
  const use = (text: string) => {
    refusal.textContent = actions.set(text) ?? "";
  };
  const remove = element("button", { type: "button" }, "Remove");
  remove.addEventListener("click", () => use(""));
  const cancel = element("button", { type: "button" }, "Cancel");
  cancel.addEventListener("click", actions.cancel);
  field.addEventListener("input", () => {
    refusal.textContent = "";
    actions.typed(field.value);
  });

  const by = comment ? commentWords(comment).by : "New comment";
  const title = `${by} at ${addressOf(place.row, place.column)}`;
  const save = element("button", {}, "Save");
  const buttons = [save, ...(comment ? [remove] : []), cancel];
  const form = element(
    "form",
    { className: "panel" },
    element("label", {}, title, field),
    refusal,
    element("p", { className: "actions" }, ...buttons),
  );
  form.setAttribute("aria-label", "Comment");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    use(field.value);
  });
  form.addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    event.stopPropagation();
    actions.cancel();
  });
  // Once it stands on the page, and the menu that it was chosen from has gone.
  setTimeout(() => field.focus(), 0);
  return form;
}
