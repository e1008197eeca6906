import { addressOf, parseAddress } from "../address";
import type { ChartPart, Part, RulePart } from "../plan";
import type { Draft } from "./draft";
import { ruleLooks } from "./looks";
import { placeBlock, placeSpill, placeTable } from "./place-cells";
import { placeLine, placeText } from "./place-lines";
import { cellsOf, inFormula } from "./symbols";

function placeChart(draft: Draft, part: ChartPart): void {
  draft.charts.push({
    ...parseAddress(part.at),
    width: part.width,
    height: part.height,
    chart: part.chart,
    title: part.title,
    alt: part.alt,
    x: part.x,
    y: part.y,
    series: part.series.map(({ name, values, x, role }) => ({
      name,
      role: role ?? "line",
      values: cellsOf(draft.symbols, values),
      ...(x === undefined ? {} : { x: cellsOf(draft.symbols, x) }),
    })),
  });
}

function placeRule(draft: Draft, part: RulePart): void {
  const { sheet, area } = cellsOf(draft.symbols, part.on);
  if (sheet !== draft.name) throw new Error(`The rule on ${part.on} belongs on another sheet.`);
  const place = { sheet, cell: { row: area.row, column: area.column } };
  const text = (value: number | string) => inFormula(draft.symbols, `${value}`, place);
  const formula = ruleFormula(addressOf(area.row, area.column), part.when, text);
  draft.formats.push({ area, formula, look: ruleLooks[part.look] });
}

/** Texts and blanks are neither above nor below; a spreadsheet's own comparison puts texts above all numbers. */
function ruleFormula(
  cell: string,
  when: RulePart["when"],
  text: (value: number | string) => string,
): string {
  if (when === "error") return `ISERROR(${cell})`;
  if ("formula" in when) return text(when.formula);
  return "above" in when
    ? `AND(ISNUMBER(${cell}),${cell}>${text(when.above)})`
    : `AND(ISNUMBER(${cell}),${cell}<${text(when.below)})`;
}

/** Puts one part of a plan into the draft of its sheet. */
export function placePart(draft: Draft, part: Part): void {
  switch (part.kind) {
    case "text":
      placeText(draft, part);
      break;
    case "input":
    case "result":
      placeLine(draft, part);
      break;
    case "table":
      placeTable(draft, part);
      break;
    case "spill":
      placeSpill(draft, part);
      break;
    case "block":
      placeBlock(draft, part);
      break;
    case "chart":
      placeChart(draft, part);
      break;
    case "rule":
      placeRule(draft, part);
      break;
  }
}
