/** The drop-down of a cell with a list: a button beside the selected cell, by mouse or by Alt and the down arrow. */
import { CellValueType, ICommandService, type IDisposable } from "@univerjs/core";
import {
  SetRangeValuesCommand,
  SetWorksheetActiveOperation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { SheetCanvasPopManagerService } from "@univerjs/sheets-ui";
import { ComponentManager, ILayoutService } from "@univerjs/ui";
import { createElement } from "react";
import { type CellPlace, samePlace } from "../../engine/cell-place";
import { readValue } from "../../engine/read-cells";
import { addressOf } from "../../workbook/address";
import { isEditing } from "../grid/editing";
import { type Grid, workbookOf } from "../grid/grid";
import { type Choice, choicesAt, ruleAt, selectedPlace } from "./entry-check";
import { listBox } from "./list-box";

/** The grid shows a popup of ours as a component: an empty place that we fill. */
const PLACE = "dosewright.cell-popup";

interface PlaceProps {
  readonly popup: { readonly extraProps?: { readonly fill?: (place: HTMLElement) => void } };
}

export class Choices {
  #button: IDisposable | undefined;
  #list: IDisposable | undefined;
  #at: CellPlace | undefined;

  constructor(
    private readonly grid: Grid,
    private readonly chosen: () => void,
  ) {
    const { injector } = grid;
    injector.get(ComponentManager).register(PLACE, ({ popup }: PlaceProps) =>
      createElement("div", {
        ref: (place: HTMLElement | null) => void (place && popup.extraProps?.fill?.(place)),
      }),
    );
    // A workbook that is opened selects its first cell before the grid has a place on the page.
    const follow = () => setTimeout(() => this.follow(), 0);
    injector.get(SheetsSelectionsService).selectionChanged$.subscribe(follow);
    injector.get(ICommandService).onCommandExecuted(({ id }) => {
      if (id === SetWorksheetActiveOperation.id) this.follow();
    });
    addEventListener("keydown", (event) => this.openByKey(event), { capture: true });
  }

  /** The button stands beside the selected cell, where that has a list which its file does not hide. */
  follow(): void {
    const place = selectedPlace(this.grid);
    const rule = place && ruleAt(this.grid, place);
    const listed = rule?.type === "list" && rule.showDropDown !== false ? place : undefined;
    if (this.#at && listed && samePlace(this.#at, listed)) return;
    this.#list?.dispose();
    this.#button?.dispose();
    this.#at = listed;
    if (!listed) return;
    const address = addressOf(listed.row, listed.column);
    this.#button = this.attach(listed, "right-center", (holder) => {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "choices-button";
      button.setAttribute("aria-label", `Choices for ${address}`);
      button.setAttribute("aria-haspopup", "listbox");
      button.addEventListener("click", () => void this.open(listed));
      holder.replaceChildren(button);
    });
  }

  private openByKey(event: KeyboardEvent): void {
    if (!event.altKey || event.key !== "ArrowDown") return;
    // The key may come at once after the cell was selected.
    this.follow();
    if (!this.#at) return;
    const { injector } = this.grid;
    if (isEditing(this.grid)) return;
    if (!injector.get(ILayoutService).isFocused) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    void this.open(this.#at);
  }

  private async open(place: CellPlace): Promise<void> {
    const choices = (await choicesAt(this.grid, place)) ?? [];
    if (this.#at !== place) return;
    this.#list?.dispose();
    const sheet = workbookOf(this.grid)?.getSheetBySheetId(place.sheetId);
    const now = readValue(sheet?.getCellRaw(place.row, place.column));
    const close = () => {
      this.#list?.dispose();
      this.#list = undefined;
      this.grid.injector.get(ILayoutService).focus();
    };
    const list = listBox({
      label: `Choices for ${addressOf(place.row, place.column)}`,
      options: choices.map(({ label }) => label),
      selected: choices.findIndex(({ value }) => value === now),
      choose: (index) => {
        close();
        this.write(place, choices[index] as Choice);
        this.chosen();
      },
      close,
    });
    this.#list = this.attach(
      place,
      "vertical",
      (holder) => {
        if (holder.contains(list)) return;
        holder.replaceChildren(list);
        list.focus();
      },
      close,
    );
  }

  private write({ sheetId, row, column }: CellPlace, { value }: Choice): void {
    const types = {
      number: CellValueType.NUMBER,
      string: CellValueType.STRING,
      boolean: CellValueType.BOOLEAN,
    };
    this.grid.injector.get(ICommandService).executeCommand(SetRangeValuesCommand.id, {
      unitId: workbookOf(this.grid)?.getUnitId(),
      subUnitId: sheetId,
      range: { startRow: row, endRow: row, startColumn: column, endColumn: column },
      value: {
        v: typeof value === "boolean" ? Number(value) : value,
        t: types[typeof value as keyof typeof types],
        f: null,
        si: null,
        p: null,
      },
    });
  }

  private attach(
    { row, column }: CellPlace,
    direction: "right-center" | "vertical",
    fill: (place: HTMLElement) => void,
    onClickOutside?: () => void,
  ): IDisposable | undefined {
    const popup = { componentKey: PLACE, direction, extraProps: { fill } };
    return (
      this.grid.injector
        .get(SheetCanvasPopManagerService)
        .attachPopupToCell(row, column, { ...popup, ...(onClickOutside && { onClickOutside }) }) ??
      undefined
    );
  }
}
