import { parseAddress } from "../address";
import type { ChartPart, Part, RulePart } from "../plan";
import type { Draft } from "./draft";
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
  const { when, look } = part;
  const test =
    when === "error"
      ? when
      : "above" in when
        ? { above: text(when.above) }
        : "below" in when
          ? { below: text(when.below) }
          : { formula: text(when.formula) };
  draft.rules.push({ area, test, look });
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
