/** Where the charts of a sheet stand. */
import type { Sheet } from "../../book";
import { pixelsOfCharacters } from "../../column-width";
import { sheetColumns, sheetRows } from "../../formula/shared";
import { prefixed } from "../../xml";
import { at, childrenOf, type Node, within } from "./tree";

export interface Standing {
  readonly row: number;
  readonly column: number;
  readonly width: number;
  readonly height: number;
  readonly alt: string;
  /** Of its part, among the relations of the drawing. */
  readonly relation: string;
}

const EMU_PER_PIXEL = 9525;
const USUAL_COLUMN_PIXELS = 64;
const USUAL_ROW_PIXELS = 20;
const MOST_PIXELS = 4000;

const columnPixels = ({ columnWidths }: Sheet, column: number) => {
  const characters = columnWidths?.[column];
  return characters === undefined
    ? USUAL_COLUMN_PIXELS
    : Math.round(pixelsOfCharacters(characters));
};
const rowPixels = ({ rowHeights }: Sheet, row: number) => {
  const points = rowHeights?.[row];
  return points === undefined ? USUAL_ROW_PIXELS : Math.round((points * 4) / 3);
};

const numberIn = (node: Node | undefined) => Number(node?.text.trim() || Number.NaN);
const pixels = (emu: number) => emu / EMU_PER_PIXEL;

/** From the one corner to the other, over the lines between them. */
function distance(from: Corner, to: Corner, size: (line: number) => number): number {
  let length = to.offset - from.offset;
  for (let line = from.line; line < to.line && length < MOST_PIXELS; line++) length += size(line);
  return Math.round(length);
}

interface Corner {
  readonly line: number;
  readonly offset: number;
}

const corner = (node: Node | undefined, line: string, offset: string): Corner => ({
  line: numberIn(at(node, line)),
  offset: pixels(numberIn(at(node, offset)) || 0),
});

export function standingCharts(drawing: Node, sheet: Sheet): Standing[] {
  const root = at(drawing, "wsDr");
  return [...childrenOf(root, "twoCellAnchor"), ...childrenOf(root, "oneCellAnchor")].flatMap(
    (anchor) => standing(anchor, sheet) ?? [],
  );
}

function standing(anchor: Node, sheet: Sheet): Standing | undefined {
  const [chart] = within(at(anchor, "graphicFrame", "graphic"), "chart");
  const relation = chart && prefixed(chart.attributes, "id");
  const [from, to] = [at(anchor, "from"), at(anchor, "to")];
  const [left, top] = [corner(from, "col", "colOff"), corner(from, "row", "rowOff")];
  const extent = at(anchor, "ext")?.attributes;
  const [width, height] = to
    ? [
        distance(left, corner(to, "col", "colOff"), (line) => columnPixels(sheet, line)),
        distance(top, corner(to, "row", "rowOff"), (line) => rowPixels(sheet, line)),
      ]
    : [pixels(Number(extent?.cx)), pixels(Number(extent?.cy))];
  const isPlace =
    left.line >= 0 && left.line < sheetColumns && top.line >= 0 && top.line < sheetRows;
  const isSize = [width, height].every((size) => size > 0 && size <= MOST_PIXELS);
  if (relation === undefined || !isPlace || !isSize) return undefined;
  const alt = at(anchor, "graphicFrame", "nvGraphicFramePr", "cNvPr")?.attributes.descr ?? "";
  return { row: top.line, column: left.line, width, height, alt, relation };
}
