/** Finding where people look for it: in the page's own row of buttons, and by Ctrl+F. */
import { ILayoutService } from "@univerjs/ui";
import { addressOf } from "../../workbook/address";
import { openBelow } from "../drop-down";
import { element, labelled } from "../element";
import { type Grid, workbookOf } from "../grid/grid";
import { here, nextOf } from "../view/reading-order";
import { reveal } from "../view/reveal";
import { type Matches, matchesOf, type SearchedCell } from "./matches";
import { searchedCells } from "./searched-cells";
import "./finding.css";

/** Gives what opens it, ready for words. */
export function offerFinding(grid: Grid, menu: HTMLDetailsElement): () => void {
  // What was looked for is there when the panel opens again.
  let words = "";
  let inFormulas = false;
  const open = openBelow(menu, (close) => {
    let searched: SearchedCell[] | undefined;
    const field = element("input", { type: "search", value: words, autocomplete: "off" });
    const formulas = element("input", { type: "checkbox", checked: inFormulas });
    const told = element("p", { className: "told" });
    told.setAttribute("role", "status");

    const find = (): Matches => {
      [words, inFormulas] = [field.value, formulas.checked];
      searched ??= searchedCells(grid);
      return matchesOf(words, searched, inFormulas);
    };
    const tell = (matches: Matches, found?: Found) => {
      told.textContent = words.trim() === "" ? "" : counted(matches, found);
    };
    const count = () => tell(find());
    const go = (direction: "next" | "previous") => {
      const matches = find();
      const at = nextOf(matches.cells, here(grid), direction);
      const cell = matches.cells[at];
      if (cell) {
        reveal(grid, cell.place.sheetId, { ...cell.place, rows: 1, columns: 1 });
        field.focus();
      }
      tell(matches, cell && { at, name: nameOf(grid, cell) });
    };

    const previous = element("button", { type: "button" }, "Previous");
    previous.addEventListener("click", () => go("previous"));
    field.addEventListener("input", count);
    formulas.addEventListener("change", count);
    const form = element(
      "form",
      { className: "panel" },
      labelled("Find in all sheets", field),
      element("label", { className: "tick" }, formulas, "In formulas, too"),
      told,
      element("p", { className: "actions" }, element("button", {}, "Next"), previous),
    );
    form.setAttribute("aria-label", "Find");
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      go("next");
    });
    form.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && event.shiftKey && event.target === field) {
        event.preventDefault();
        go("previous");
      } else if (event.key === "Escape") {
        // Who has found a cell goes on in it.
        event.stopPropagation();
        close();
        grid.injector.get(ILayoutService).focus();
      }
    });
    setTimeout(() => document.activeElement === field || field.select(), 0);
    return form;
  });
  return () => {
    open();
    menu.querySelector("input")?.select();
  };
}

interface Found {
  readonly at: number;
  readonly name: string;
}

function nameOf(grid: Grid, { place: { sheetId, row, column } }: SearchedCell): string {
  const sheet = workbookOf(grid)?.getSheetBySheetId(sheetId)?.getName() ?? "";
  return `${sheet}, ${addressOf(row, column)}`;
}

function counted({ cells, hidden }: Matches, found?: Found): string {
  const more =
    hidden === 0
      ? ""
      : ` ${cells.length > 0 ? `${hidden} more` : hidden} in hidden rows or columns.`;
  if (cells.length === 0) return `No cell that shows holds this.${more}`;
  const total = cells.length === 1 ? "1 cell" : `${cells.length} cells`;
  return found ? `${found.name}: ${found.at + 1} of ${total}.${more}` : `${total}.${more}`;
}
