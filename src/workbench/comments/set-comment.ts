/** Writes, changes or removes the comment of a cell, in one step to undo. */
import type { CellPlace } from "../../engine/cell-place";
import { type CellComment, LONGEST_COMMENT } from "../../workbook/book";
import { selectedPlace } from "../entries/entry-check";
import type { FollowedComments } from "../following/comments";
import { isEditing, WHILE_EDITING } from "../grid/editing";
import { type Grid, workbookOf } from "../grid/grid";
import { writeAsOneStep } from "../grid/one-step";
import { worded } from "../view/comments";

const THREAD =
  "The comments at this cell are a thread, which can only be read here: answer it where it was written.";

export interface Commentable {
  readonly place: CellPlace;
  readonly comment: CellComment | undefined;
}

/** The selected cell with its comment; or the sentence why none can be written there. */
export function commentable(grid: Grid, comments: FollowedComments): Commentable | string {
  if (isEditing(grid)) return WHILE_EDITING;
  const place = selectedPlace(grid);
  if (!place) return "Select the cell to comment on.";
  const comment = comments.at(place);
  return comment?.thread ? THREAD : { place, comment };
}

/** Of what was typed, what a file can say: pasted texts may hold characters that none can. */
const plain = (typed: string) =>
  typed
    .replace(/\r\n?/g, "\n")
    .replace(/(?![\t\n])\p{Cc}|\p{Cs}|[\ufffe\uffff]/gu, "")
    .trim();

/** A blank text is no comment. Gives why it did not, where it did not. */
export function setComment(
  grid: Grid,
  comments: FollowedComments,
  place: CellPlace,
  typed: string,
): string | undefined {
  const workbook = workbookOf(grid);
  if (!workbook?.getSheetBySheetId(place.sheetId)) return "The sheet of this cell is gone.";
  const before = comments.at(place);
  if (before?.thread) return THREAD;
  const said = plain(typed);
  const text = said === "" || !before ? said : worded(before, said);
  if (text.length > LONGEST_COMMENT)
    return `A comment holds at most ${LONGEST_COMMENT.toLocaleString("en")} characters; this one has ${text.length.toLocaleString("en")}.`;
  if (text === (before?.text ?? "")) return undefined;
  const steps = [comments.step(workbook.getUnitId(), place, text)];
  writeAsOneStep(grid, workbook, new Map(), { steps });
  return undefined;
}
