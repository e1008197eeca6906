/** What became of the comments of a sheet since its file was read. */
import { addressOf } from "../address";
import type { CellComment } from "../book";

/** Where a comment of the file now is, and what it says where that is something else. */
export interface CommentNow {
  readonly cell: string;
  readonly text?: string;
}

export interface CommentChanges {
  /** By the cell that a comment has in its file; null where it is no more. */
  readonly kept: ReadonlyMap<string, CommentNow | null>;
  readonly added: readonly CellComment[];
}

export const cellOf = ({ area: { row, column } }: CellComment) => addressOf(row, column);

/** Of one sheet; and whether some of its threads, which are on other sheets now, are left where they were. */
export function commentChanges(
  before: readonly CellComment[],
  now: readonly CellComment[],
  elsewhere: ReadonlySet<string> = new Set(),
): { changes: CommentChanges; left: boolean } {
  const known = new Set(before.map(({ id }) => id));
  const byId = new Map(now.map((comment) => [comment.id, comment]));
  const taken = new Set(now.map(cellOf));
  // No file says a thread anew: it stays in the part that has it.
  const strayed = before.filter(({ thread, id }) => thread && elsewhere.has(id));
  const isLeft = (comment: CellComment) => strayed.includes(comment) && !taken.has(cellOf(comment));
  const kept = before.flatMap((comment): [string, CommentNow | null][] => {
    if (isLeft(comment)) return [];
    const its = byId.get(comment.id);
    if (!its) return [[cellOf(comment), null]];
    const says = its.text === comment.text ? {} : { text: its.text };
    const same = cellOf(its) === cellOf(comment) && its.text === comment.text;
    return same ? [] : [[cellOf(comment), { cell: cellOf(its), ...says }]];
  });
  const added = now.filter(({ id, thread }) => !known.has(id) && !thread);
  return { changes: { kept: new Map(kept), added }, left: strayed.length > 0 };
}
