/** A chart's picture as a drawing: its title, what is drawn on its axes, and the key to its series. */

import { keyOf, keyRows } from "./key";
import type { ChartPicture } from "./picture";
import { drawPlot } from "./plot";

/** As in charts.css, the frame's line included. */
const PADDING = 11;
const TITLE = 24;
const KEY_ROW = 18;

/** `lost` are the series whose cells are gone. */
export function drawChart(
  picture: ChartPicture,
  width: number,
  height: number,
  lost: readonly string[],
): HTMLElement {
  const chart = document.createElement("div");
  const inner = width - 2 * PADDING;
  const title = textOf("p", "chart-title", picture.title);
  chart.append(title);
  const keyed = picture.series.length > 1;
  const keyHeight = keyed ? KEY_ROW * keyRows(picture, inner) + 4 : 0;
  const note = noteOf(picture, lost);
  const left = height - 2 * PADDING - TITLE - keyHeight - (note ? KEY_ROW : 0);
  if (!picture.blank) chart.append(drawPlot(picture, inner, left));
  if (note) chart.append(textOf("p", "chart-note", note));
  if (keyed && !picture.blank) chart.append(keyOf(picture));
  return chart;
}

/** What a person should know of the picture that it cannot show. */
export function noteOf(
  { blank, failing, series }: ChartPicture,
  lost: readonly string[],
): string | undefined {
  const notes: string[] = [];
  if (lost.length > 0) notes.push(`The cells of ${lost.join(", ")} are gone from the workbook.`);
  if (series.length === 0) return notes.join(" ");
  if (blank) notes.push("There is no number to draw: the cells are blank or show errors.");
  else if (failing > 0)
    notes.push(`${failing === 1 ? "One cell" : `${failing} cells`} with an error left out.`);
  return notes.length > 0 ? notes.join(" ") : undefined;
}

function textOf(tag: string, kind: string, text: string): HTMLElement {
  const element = document.createElement(tag);
  element.className = kind;
  element.textContent = text;
  return element;
}
