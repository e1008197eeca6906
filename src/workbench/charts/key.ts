/** Which look belongs to which series. */
import { dot, plot } from "@observablehq/plot";
import { dashOf, fillOf, inkOf, isMarked, rimOf, symbolOf, widthOf } from "./look";
import type { ChartPicture, PicturedSeries } from "./picture";
import { textWidth } from "./text-width";

const SWATCH = 26;
const SPACE = 22;

/** How many rows the key takes in so much width. */
export function keyRows({ series }: ChartPicture, width: number): number {
  let rows = 1;
  let used = 0;
  for (const { name } of series) {
    const item = SWATCH + SPACE + textWidth(name);
    if (used > 0 && used + item > width) {
      rows++;
      used = 0;
    }
    used += item;
  }
  return rows;
}

export function keyOf({ series }: ChartPicture): HTMLElement {
  const key = document.createElement("div");
  key.className = "chart-key";
  for (const one of series) {
    const item = document.createElement("span");
    item.append(swatch(one, isMarked(one, series)), one.name);
    key.append(item);
  }
  return key;
}

function swatch(series: PicturedSeries, marked: boolean): Element {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("width", String(SWATCH));
  svg.setAttribute("height", "12");
  const add = (tag: string, attributes: Record<string, string | number | undefined>) => {
    const element = document.createElementNS(svg.namespaceURI as string, tag);
    for (const [name, value] of Object.entries(attributes))
      if (value !== undefined) element.setAttribute(name, String(value));
    svg.append(element);
  };
  if (series.shape === "columns")
    add("rect", { x: 8, y: 1, width: 14, height: 10, fill: fillOf(series) });
  else if (series.shape !== "points")
    add("line", {
      x1: 0,
      x2: SWATCH - 4,
      y1: 6,
      y2: 6,
      stroke: inkOf(series),
      "stroke-width": widthOf(series),
      "stroke-dasharray": dashOf(series),
    });
  if (marked) svg.append(mark(series));
  return svg;
}

/** The same mark as in the picture. */
function mark(series: PicturedSeries): Element {
  const drawn = plot({
    width: SWATCH - 4,
    height: 12,
    margin: 0,
    axis: null,
    x: { domain: [0, 1] },
    y: { domain: [0, 1] },
    marks: [
      dot([[0.5, 0.5]], {
        symbol: symbolOf(series),
        r: 3.5,
        fill: inkOf(series),
        stroke: rimOf(series),
        strokeWidth: 1,
      }),
    ],
  });
  return drawn.querySelector("g") as Element;
}
