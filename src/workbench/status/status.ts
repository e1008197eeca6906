/** The line under the grid: the selected cell in full, why it fails or what belongs into it, and how many cells fail. */
import { ICommandService, type ISheetDataValidationRule } from "@univerjs/core";
import {
  SetStyleCommand,
  SetWorksheetActiveOperation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { CellAlertManagerService } from "@univerjs/sheets-ui";
import { type CellPlace, samePlace } from "../../engine/cell-place";
import { addressOf } from "../../workbook/address";
import { type CellComment, isError, type Value } from "../../workbook/book";
import { errorWords } from "../../workbook/formula/error-words";
import { ruleAt, selectedPlace } from "../entries/entry-check";
import { SET_COMMENTS } from "../following/comments";
import { type Grid, workbookOf } from "../grid/grid";
import { failingCells, valueAt } from "../grid/seen-cells";
import { type CommentAt, commentWords } from "../view/comments";
import { here, inOrder, nextOf, positions } from "../view/reading-order";
import { reveal } from "../view/reveal";
import { patternAt, shownValue } from "../view/shown-value";
import { messageAt } from "./message-at";

interface SeenCell {
  readonly place: CellPlace;
  readonly address: string;
  readonly value: Value;
  readonly shown: string;
  /** Why it fails, as far as it is known. */
  readonly message?: string;
  readonly prompt?: string;
  readonly comment?: CellComment;
}

/** What is said of entries while a cell is selected. */
export interface Said {
  readonly place: CellPlace;
  readonly text: string;
  /** That an entry stands, though a rule warns of it. */
  readonly mild?: boolean;
}

export class Status {
  #said: Said | undefined;

  constructor(
    private readonly grid: Grid,
    private readonly line: HTMLElement,
    private readonly count: HTMLButtonElement,
    private readonly commentAt: CommentAt,
  ) {
    grid.injector.get(SheetsSelectionsService).selectionChanged$.subscribe(() => this.show());
    grid.injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
      // A sheet comes to the front with the selection that it had, or gets its first one, and neither is told.
      if (id === SetWorksheetActiveOperation.id) requestAnimationFrame(() => this.show());
      const { trigger } = (params ?? {}) as { trigger?: string };
      if (trigger === SetStyleCommand.id || id === SET_COMMENTS) this.show();
    });
    count.addEventListener("click", () => this.goToNext());
    this.explainOnHover();
  }

  /** After a selection or a calculation. */
  show(): void {
    const cell = this.selected();
    if (cell && this.#said && !samePlace(cell.place, this.#said.place)) this.#said = undefined;
    this.line.classList.toggle("failed", cell !== undefined && isError(cell.value));
    this.line.classList.toggle("refused", this.#said !== undefined && !this.#said.mild);
    this.line.replaceChildren(...(cell ? parts(cell, this.#said?.text) : []));
    // What is cut off is scrolled by keys, too.
    if (this.line.scrollHeight > this.line.clientHeight) this.line.tabIndex = 0;
    else this.line.removeAttribute("tabindex");
  }

  /** That an entry breaks a rule, until another cell is selected or an entry is taken. */
  tell(said: Said | undefined): void {
    this.#said = said;
    this.show();
  }

  /** Why something that was asked for was not done, until another cell is selected. */
  tellHere(text: string): void {
    const place = selectedPlace(this.grid);
    if (place) this.tell({ place, text });
  }

  countFailures(): void {
    const { length } = failingCells(this.grid);
    this.count.hidden = length === 0;
    this.count.textContent =
      length === 1 ? "1 cell fails: show it" : `${length} cells fail: show the next`;
  }

  private selected(): SeenCell | undefined {
    const worksheet = workbookOf(this.grid)?.getActiveSheet();
    const place = selectedPlace(this.grid);
    if (!worksheet || !place) return undefined;
    const { row, column } = place;
    const prompt = promptOf(ruleAt(this.grid, place));
    const comment = this.commentAt(place);
    const value = valueAt(this.grid, worksheet, row, column);
    const message = isError(value)
      ? (messageAt(this.grid, worksheet, row, column, value.error) ?? errorWords(value.error))
      : undefined;
    return {
      place,
      address: addressOf(row, column),
      value,
      shown: shownValue(value, patternAt(this.grid, worksheet, row, column)),
      ...(message !== undefined && { message }),
      ...(prompt !== undefined && { prompt }),
      ...(comment && { comment }),
    };
  }

  /** Behind the selected cell, in the order of sheets, rows and columns; from the end on to the first. */
  private goToNext(): void {
    const cells = failingCells(this.grid).map(positions(this.grid)).sort(inOrder);
    const next = cells[nextOf(cells, here(this.grid), "next")]?.place;
    if (next) reveal(this.grid, next.sheetId, { ...next, rows: 1, columns: 1 });
  }

  /** The grid shows a general word on an error cell under the mouse; our functions know better. */
  private explainOnHover(): void {
    const alerts = this.grid.injector.get(CellAlertManagerService);
    const show = alerts.showAlert.bind(alerts);
    alerts.showAlert = (alert) => {
      const { row, col, subUnitId } = alert.location;
      const worksheet = workbookOf(this.grid)?.getSheetBySheetId(subUnitId);
      const value = worksheet && valueAt(this.grid, worksheet, row, col);
      const error = value && isError(value) ? value.error : undefined;
      const message = worksheet && error && messageAt(this.grid, worksheet, row, col, error);
      show(message ? { ...alert, title: error, message, width: 320 } : alert);
    };
  }
}

/** A list says how it is opened without a mouse. */
function promptOf(rule: ISheetDataValidationRule | undefined): string | undefined {
  if (rule?.type !== "list") return rule?.prompt;
  return [rule.prompt, "Alt and the down arrow open the list."].filter(Boolean).join(" ");
}

function parts(
  { address, value, shown, message, prompt, comment }: SeenCell,
  ofEntries: string | undefined,
): HTMLElement[] {
  const part = (kind: string, text: string) => {
    const span = document.createElement("span");
    span.className = kind;
    span.textContent = text;
    return span;
  };
  const said = ofEntries ?? message ?? (isError(value) ? undefined : prompt);
  return [
    part("address", address),
    part("value", shown),
    ...(said === undefined ? [] : [part("message", said)]),
    ...(comment ? [part("comment", Object.values(commentWords(comment)).join(": "))] : []),
  ];
}
