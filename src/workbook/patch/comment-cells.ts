/** Comments of a sheet whose cells were put elsewhere since its file was read. */
import { addressOf, parseAddress } from "../address";
import type { CellComment } from "../book";
import { partsOf, relationshipsOf } from "../package/relationships";
import type { OpenedWorkbook } from "../read/read-workbook";
import { readXml, type XmlElement } from "../xml";
import type { PackageEdits } from "./package-edits";
import { type Replacement, splice } from "./splice";

/** By the cell that a comment has in its file: the one that it has now; null where another took its place. */
export type CommentMoves = ReadonlyMap<string, string | null>;

const cellOf = ({ area: { row, column } }: CellComment) => addressOf(row, column);

/** Of one sheet; and whether some of its comments, which are on other sheets now, are left where they were. */
export function commentMoves(
  before: readonly CellComment[],
  now: readonly CellComment[],
  elsewhere: ReadonlySet<string>,
): { moves: CommentMoves; left: boolean } {
  const cells = new Map(now.map((comment) => [comment.id, cellOf(comment)]));
  const taken = new Set(cells.values());
  const isLeft = (comment: CellComment) => elsewhere.has(comment.id) && !taken.has(cellOf(comment));
  const moves = before
    .filter((comment) => !isLeft(comment))
    .map((comment) => [cellOf(comment), cells.get(comment.id) ?? null] as const);
  return {
    moves: new Map(moves.filter(([from, to]) => from !== to)),
    left: before.some(({ id }) => elsewhere.has(id)),
  };
}

/** In the parts that say them, and in the drawing of the boxes in which they are shown. */
export async function patchComments(
  edits: PackageEdits,
  { file, part }: OpenedWorkbook,
  sheet: string,
  moves: CommentMoves,
): Promise<void> {
  const sheetPath = part.sheets.find(({ name }) => name === sheet)?.path;
  if (sheetPath === undefined || moves.size === 0) return;
  const related = await relationshipsOf(file, sheetPath);
  for (const kind of ["comments", "threadedComment"])
    for (const path of partsOf(file, related, kind))
      edits.set(path, patchCells(path, await edits.text(path), moves));
  for (const path of partsOf(file, related, "vmlDrawing"))
    edits.set(path, patchBoxes(await edits.text(path), moves));
}

function patchCells(path: string, xml: string, moves: CommentMoves): string {
  const replacements: Replacement[] = [];
  const open: XmlElement[] = [];
  readXml(path, xml, {
    open: (element) => open.push(element),
    close(name, end) {
      const element = open.pop();
      const cell = element?.attributes.ref ?? "";
      const to = moves.get(cell.toUpperCase());
      if (!element || to === undefined || (name !== "comment" && name !== "threadedComment"))
        return;
      const { start, innerStart } = element;
      const tag = xml.slice(start, innerStart).replace(/(\sref=)(["'])[^"']*\2/, `$1$2${to}$2`);
      replacements.push(
        to === null ? { start, end, text: "" } : { start, end: innerStart, text: tag },
      );
    },
  });
  return splice(xml, replacements);
}

/** Old drawings are no good XML: lines break in them as in web pages. */
function patchBoxes(drawing: string, moves: CommentMoves): string {
  return drawing.replace(/<v:shape\b[^>]*>.*?<\/v:shape>/gs, (shape) => {
    const numberIn = (name: string) =>
      Number(new RegExp(`<x:${name}>\\s*(\\d+)\\s*</x:${name}>`).exec(shape)?.[1]);
    const [row, column] = [numberIn("Row"), numberIn("Column")];
    const to = moves.get(row >= 0 && column >= 0 ? addressOf(row, column) : "");
    if (to === null) return "";
    if (to === undefined) return shape;
    const now = parseAddress(to);
    return shape
      .replace(/(<x:Row>)[^<]*/, `$1${now.row}`)
      .replace(/(<x:Column>)[^<]*/, `$1${now.column}`)
      .replace(/(<x:Anchor>)([^<]*)/, (_, tag: string, anchor: string) => {
        const places = anchor.split(",").map(Number);
        const by = [now.column - column, 0, now.row - row, 0];
        return tag + places.map((place, at) => Math.max(0, place + (by[at % 4] ?? 0))).join(", ");
      });
  });
}
