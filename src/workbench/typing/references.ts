/** The references in a formula that is being written, as text. */
import { type IRange, RANGE_TYPE } from "@univerjs/core";
import {
  deserializeRangeWithSheet,
  handleRefStringInfo,
  type ISequenceNode,
  sequenceNodeType,
  serializeRange,
} from "@univerjs/engine-formula";

/** What a formula consists of, behind its equals sign. */
export type Parts = readonly (ISequenceNode | string)[];

/** A formula, and where in it the caret stands. */
export interface Written {
  readonly text: string;
  readonly caret: number;
}

export function referenceAt(parts: Parts, index: number): ISequenceNode | undefined {
  const part = parts[index];
  const isReference = typeof part === "object" && part.nodeType === sequenceNodeType.REFERENCE;
  return isReference ? part : undefined;
}

/** Which of the parts is the reference that the caret stands behind; else -1. */
export const referenceBefore = (parts: Parts, caret: number): number =>
  parts.findIndex((_, index) => {
    const reference = referenceAt(parts, index);
    return reference !== undefined && endOf(reference) === caret;
  });

/** Places in a part are counted from behind the equals sign, and the end is its last letter. */
const endOf = ({ endIndex }: ISequenceNode): number => endIndex + 2;

/** Without the reference that the caret stands behind. */
export function withoutReference({ text, caret }: Written, reference: ISequenceNode): Written {
  const start = caret - reference.token.length;
  return { text: text.slice(0, start) + text.slice(caret), caret: start };
}

/** With other cells in the place of a reference, which keeps its sheet and its $. */
export function withCells(
  { text, caret }: Written,
  reference: ISequenceNode,
  cells: IRange,
): Written {
  const end = endOf(reference);
  const start = end - reference.token.length;
  const other = referenceTo(cells, reference.token);
  const isBehind = caret > start;
  return {
    text: text.slice(0, start) + other + text.slice(end),
    caret: isBehind ? start + other.length + Math.max(0, caret - end) : caret,
  };
}

function referenceTo(cells: IRange, like: string): string {
  const { range } = deserializeRangeWithSheet(like);
  const { refBody } = handleRefStringInfo(like);
  const isCell = cells.startRow === cells.endRow && cells.startColumn === cells.endColumn;
  const { startAbsoluteRefType: start } = range;
  const body = serializeRange({
    ...range,
    ...cells,
    rangeType: cells.rangeType ?? range.rangeType ?? RANGE_TYPE.NORMAL,
    ...(isCell && start !== undefined && { endAbsoluteRefType: start }),
  });
  return like.slice(0, like.length - refBody.length) + body;
}
