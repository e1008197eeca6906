/** How the series of a chart look: as in the .xlsx, in colours of the page, told apart without colour too. */
import { FAINT, INK, PAPER } from "../../pane/pictures/look";
import { limitColour, seriesColours } from "../../workbook/layout/looks";
import type { PicturedSeries } from "./picture";

const place = (look: number) => look % seriesColours.length;

/** The colours of the .xlsx; charts.css makes those of the page of them, by its theme. */
export const fileColours: Readonly<Record<string, string>> = {
  ...Object.fromEntries(seriesColours.map((colour, index) => [`--file-${index}`, colour])),
  "--file-limit": limitColour,
};

export function inkOf({ role, look }: PicturedSeries): string {
  if (role === "limit") return "var(--series-limit)";
  return role === "band" ? FAINT : `var(--series-${place(look)})`;
}

export const fillOf = ({ look }: PicturedSeries) => `url(#chart-fill-${place(look)})`;

const SYMBOLS = ["circle", "square", "triangle", "diamond", "wye", "star"] as const;
export const symbolOf = ({ look }: PicturedSeries) =>
  SYMBOLS[look % SYMBOLS.length] as (typeof SYMBOLS)[number];

export const widthOf = ({ role }: PicturedSeries) => (role === "band" ? 1.25 : 2);

export function dashOf({ role }: PicturedSeries): string {
  if (role === "limit") return "8 5";
  return role === "band" ? "1.5 3" : "none";
}

/** What was measured stands out by a rim, also where its colour is pale. */
export const rimOf = ({ role }: PicturedSeries) => (role === "measured" ? INK : PAPER);

/** Whether a series shows marks: points do, and lines that only marks tell from one another. */
export function isMarked(series: PicturedSeries, all: readonly PicturedSeries[]): boolean {
  const isPlain = ({ shape, role }: PicturedSeries) => shape === "line" && role === "line";
  if (isPlain(series)) return all.filter(isPlain).length > 1;
  return series.shape === "points" || series.shape === "line and points";
}

/** Fine lines over the colour of each series but the first, other ones for each. */
const TEXTURES = [
  "",
  "M-2 2L2 -2M0 8L8 0M6 10L10 6",
  "M0 2h8M0 6h8",
  "M3 3h2v2h-2z",
  "M-2 6L2 10M0 0L8 8M6 -2L10 2",
  "M2 0v8M6 0v8",
];

export const EDGE = "var(--edge)";

/** What columns are filled with, once for the page. */
export function fills(): SVGSVGElement {
  const holder = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  holder.setAttribute("width", "0");
  holder.setAttribute("height", "0");
  holder.setAttribute("aria-hidden", "true");
  holder.style.position = "absolute";
  holder.innerHTML = TEXTURES.map(
    (texture, index) =>
      `<pattern id="chart-fill-${index}" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="var(--fill-${index})"/><path d="${texture}" fill="none" stroke="var(--texture)"/></pattern>`,
  ).join("");
  return holder;
}
