/**
 * Cells that are filled from rows between which a filter hides others. The grid leaves those out, but then looks
 * for a source by how far down it stands, not by its order among the rows that are left: and breaks off.
 */
import { Direction } from "@univerjs/core";
import { AutoFillController, type IAutoFillLocation } from "@univerjs/sheets";

/** Sources of one kind that follow each other, in one row or column of them. */
interface Sources {
  readonly data: readonly unknown[];
  index: number[];
}
type ByKind = Readonly<Record<string, readonly Sources[]>>;

/** What is used here its types call private. */
interface Fills {
  _getCopyData(location: IAutoFillLocation, direction: Direction): readonly ByKind[];
}

export function fillFromShown(): void {
  const fills = AutoFillController.prototype as unknown as Fills;
  const read = fills._getCopyData;
  fills._getCopyData = function (location, direction) {
    const isUpOrDown = direction === Direction.DOWN || direction === Direction.UP;
    const sources = read.call(this, location, direction);
    countInOrder(sources, isUpOrDown ? location.source.rows : location.source.cols);
    return sources;
  };
}

/** The places of sources, counted from the first of the lines, as places among these lines. */
export function countInOrder(sources: readonly ByKind[], lines: readonly number[]): void {
  const [first = 0] = lines;
  const order = new Map(lines.map((line, at) => [line - first, at]));
  for (const one of sources.flatMap((kinds) => Object.values(kinds).flat()))
    one.index = one.index.map((at) => order.get(at) ?? at);
}
