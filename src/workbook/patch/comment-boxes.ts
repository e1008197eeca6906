/**
 * The boxes in which comments are shown, in the old kind of drawing that a sheet has for them.
 * Source: ECMA-376 Part 4, VML SpreadsheetML Drawing: the example of a comment, and Anchor (the columns and rows
 * of the edges, each followed by a distance in pixels).
 */
import { addressOf, parseAddress } from "../address";
import type { CellComment } from "../book";
import type { CommentNow } from "./comment-changes";

const namespaces = {
  v: "urn:schemas-microsoft-com:vml",
  o: "urn:schemas-microsoft-com:office:office",
  x: "urn:schemas-microsoft-com:office:excel",
};

const declared = (prefixes: readonly (readonly [string, string])[]) =>
  prefixes.map(([prefix, name]) => ` xmlns:${prefix}="${name}"`).join("");

const KIND = "_x0000_t202";
/** The first number of a shape, as the example has it. */
const FIRST = 1025;

/** How many columns and rows a box spans, and a row of it holds so many characters. */
const BOX = { columns: 2, characters: 20, leastRows: 4, mostRows: 25 };
const LAST = { row: 1_048_575, column: 16_383 };

/** Old drawings are no good XML: lines break in them as in web pages. */
export function patchBoxes(drawing: string, kept: ReadonlyMap<string, CommentNow | null>): string {
  return drawing.replace(/<((?:\w+:)?shape)\b[^>]*(?<!\/)>.*?<\/\1>/gs, (shape) => {
    const numberIn = (name: string) =>
      Number(new RegExp(`<(?:\\w+:)?${name}>\\s*(\\d+)\\s*</`).exec(shape)?.[1]);
    const [row, column] = [numberIn("Row"), numberIn("Column")];
    const to = kept.get(row >= 0 && column >= 0 ? addressOf(row, column) : "");
    if (to === null) return "";
    const now = to && parseAddress(to.cell);
    if (!now || (now.row === row && now.column === column)) return shape;
    return shape
      .replace(/(<(?:\w+:)?Row>)[^<]*/, `$1${now.row}`)
      .replace(/(<(?:\w+:)?Column>)[^<]*/, `$1${now.column}`)
      .replace(/(<(?:\w+:)?Anchor>)([^<]*)/, (_, tag: string, anchor: string) => {
        const places = anchor.split(",").map(Number);
        const by = [now.column - column, 0, now.row - row, 0];
        return tag + places.map((place, at) => Math.max(0, place + (by[at % 4] ?? 0))).join(", ");
      });
  });
}

/** A drawing that holds nothing but boxes. */
export const boxDrawing = (comments: readonly CellComment[]): string =>
  withBoxes(
    `<xml${declared(Object.entries(namespaces))}><o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout></xml>`,
    comments,
  );

/** A drawing with boxes for further comments. */
export function withBoxes(drawing: string, comments: readonly CellComment[]): string {
  const end = drawing.lastIndexOf("</");
  if (end < 0) return boxDrawing(comments);
  const missing = declared(
    Object.entries(namespaces).filter(([prefix]) => !drawing.includes(`xmlns:${prefix}=`)),
  );
  const numbers = [...drawing.matchAll(/\bid=["']_x0000_s(\d+)["']/g)].map(([, id]) => Number(id));
  const first = Math.max(FIRST - 1, ...numbers) + 1;
  const kind = new RegExp(`\\bid=["']${KIND}["']`).test(drawing) ? "" : kindXml(missing);
  const boxes = comments.map((comment, at) => boxXml(comment, first + at, missing));
  return drawing.slice(0, end) + kind + boxes.join("") + drawing.slice(end);
}

const kindXml = (missing: string) =>
  `<v:shapetype${missing} id="${KIND}" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>`;

function boxXml({ area: { row, column }, text }: CellComment, id: number, missing: string): string {
  const lines = text
    .split("\n")
    .reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / BOX.characters)), 0);
  const rows = Math.min(Math.max(lines, BOX.leastRows), BOX.mostRows);
  const left = Math.min(column + 1, LAST.column - BOX.columns);
  const top = Math.min(row, LAST.row - rows);
  const anchor = `${left}, 15, ${top}, 2, ${left + BOX.columns}, 31, ${top + rows}, 4`;
  return (
    `<v:shape${missing} id="_x0000_s${id}" type="#${KIND}" style="position:absolute;margin-left:59pt;margin-top:2pt;width:108pt;height:${rows * 15}pt;z-index:1;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto">` +
    '<v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"></div></v:textbox>' +
    `<x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${anchor}</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`
  );
}
