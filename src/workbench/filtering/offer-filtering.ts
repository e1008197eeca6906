/** Filtering where people look for it: in the page's own row of buttons, and on the heads that are filtered. */
import { ICommandService } from "@univerjs/core";
import { SetWorksheetActiveOperation } from "@univerjs/sheets";
import { ILayoutService } from "@univerjs/ui";
import type { Desk } from "../desk";
import { openBelow } from "../drop-down";
import { element } from "../element";
import type { Computed } from "../grid/computed";
import { type Grid, workbookOf } from "../grid/grid";
import { apply, filterableRows, type InTheWay, setCriterion } from "./filter-rows";
import { markHeads } from "./head-marks";
import { filterInGrid } from "./in-grid";
import { filterPanel } from "./panel";
import { shownRows } from "./shown-rows";
import "./filtering.css";

/** A filter that has to go before another one can be set, and a button by which it goes. */
function clearing({ sentence }: InTheWay, clear: () => void): HTMLElement {
  const button = element("button", { type: "button" }, "Clear it and filter here");
  button.addEventListener("click", clear);
  const actions = element("p", { className: "actions" }, button);
  return element("div", {}, element("p", {}, sentence), actions);
}

export function offerFiltering(
  grid: Grid,
  desk: Desk,
  computed: Computed,
  menu: HTMLDetailsElement,
  line: HTMLElement,
): void {
  const { filters } = desk.beside;
  filterInGrid(grid, filters);
  markHeads(grid, filters, (row, column) => {
    const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
    sheet?.getRange(row, column).activate();
    menu.open = true;
  });
  openBelow(menu, (close, again) => {
    const rows = filterableRows(grid, filters);
    if (typeof rows === "string") return element("div", {}, element("p", {}, rows));
    if ("sentence" in rows)
      return clearing(rows, () => {
        apply(grid, filters, rows, []);
        again();
        menu.querySelector("select")?.focus();
      });
    const done = () => {
      close();
      grid.injector.get(ILayoutService).focus();
    };
    return filterPanel(grid, rows, {
      set: (column, criterion) => {
        setCriterion(grid, filters, rows, column, criterion);
        done();
      },
      clearAll: () => {
        apply(grid, filters, rows, []);
        done();
      },
    });
  });
  const tell = () => {
    const sheet = workbookOf(grid)?.getActiveSheet();
    const told = sheet ? shownRows(grid, filters, sheet) : "";
    if (line.textContent !== told) line.textContent = told;
    line.hidden = told === "";
  };
  computed.watch(tell);
  grid.injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (id === SetWorksheetActiveOperation.id) tell();
  });
}
