/** Number formats in the page's own row of buttons: changed step by step, or by their code. */
import { ICommandService } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { ILayoutService } from "@univerjs/ui";
import { areaOf } from "../../engine/ranges";
import { addressOf, areaAddress } from "../../workbook/address";
import { openBelow } from "../drop-down";
import { element } from "../element";
import type { Grid } from "../grid/grid";
import {
  asPercentage,
  DATE,
  fewerDecimals,
  GENERAL,
  isGrouped,
  moreDecimals,
  TEXT,
  withoutThousands,
  withThousands,
} from "./code";
import { type Change, codeAt, formatCells, selectedCells, textAt } from "./format-cells";
import { readCode } from "./read-code";

interface Way {
  readonly label: string;
  readonly title: string;
  /** By the code of the cell that takes what is typed. */
  change(code: string): Change;
}

const ways: readonly Way[] = [
  { label: "Fewer decimals", title: "One less", change: () => fewerDecimals },
  { label: "More decimals", title: "One more", change: () => moreDecimals },
  {
    label: "Thousands",
    title: "1,234 or 1234",
    change: (code) => (isGrouped(code) ? withoutThousands : withThousands),
  },
  { label: "Percent", title: "0.05 as 5 %", change: () => asPercentage },
  { label: "Date", title: "Year, month and day", change: () => () => DATE },
  { label: "Text", title: "What is typed stays as it is typed: 0012", change: () => () => TEXT },
  { label: "General", title: "Without a format", change: () => () => GENERAL },
];

export function offerFormats(grid: Grid, details: HTMLDetailsElement): void {
  const { injector } = grid;
  const part = <E extends HTMLElement>(selector: string) => details.querySelector(selector) as E;
  const panel = part(".panel");
  const shown = part("#format-shown");
  const field = part<HTMLInputElement>("#format-code");
  const problem = part("#format-problem");

  let code = GENERAL;

  const tell = (sentence: string | undefined) => {
    problem.textContent = sentence ?? "";
  };
  const show = () => {
    const selected = selectedCells(grid);
    const { worksheet, row = 0, column = 0, ranges = [] } = selected ?? {};
    code = worksheet ? codeAt(grid, worksheet, row, column) : GENERAL;
    field.value = code;
    const text = worksheet ? textAt(grid, worksheet, row, column) : "";
    const areas = ranges.map((range) => areaAddress(areaOf(range))).join(", ");
    const address = addressOf(row, column);
    const several = areas === address ? "" : `${areas} selected, `;
    shown.textContent = `${several}${address} ${text ? `shows ${text}` : "shows nothing"}`;
  };
  const use = (change: Change): boolean => {
    const refused = formatCells(grid, change);
    tell(refused);
    return refused === undefined;
  };

  let close = () => {};
  openBelow(details, (its) => {
    close = its;
    tell(undefined);
    show();
    return panel;
  });
  part("#format-ways").append(
    ...ways.map(({ label, title, change }) => {
      const button = element("button", { type: "button", title }, label);
      button.addEventListener("click", () => use(change(code)));
      return button;
    }),
  );
  part("form").addEventListener("submit", (event) => {
    event.preventDefault();
    const read = readCode(field.value);
    const refused = "problem" in read;
    field.setAttribute("aria-invalid", String(refused));
    if (refused) return tell(read.problem);
    if (!use(() => read.code)) return;
    close();
    injector.get(ILayoutService).focus();
  });
  field.addEventListener("input", () => field.removeAttribute("aria-invalid"));
  // What these buttons did, undid, or did again.
  injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (details.open && id === SetRangeValuesMutation.id) show();
  });
}
