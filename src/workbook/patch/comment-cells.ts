/** Comments of a sheet that were written, changed, removed or put elsewhere since its file was read. */
import { partsOf, relationshipsOf } from "../package/relationships";
import type { OpenedWorkbook } from "../read/read-workbook";
import { addComments } from "./added-comments";
import { patchBoxes } from "./comment-boxes";
import type { CommentChanges } from "./comment-changes";
import { patchEntries } from "./comment-text";
import type { PackageEdits } from "./package-edits";

/** In the parts that say them, and in the drawing of the boxes in which they are shown. */
export async function patchComments(
  edits: PackageEdits,
  opened: OpenedWorkbook,
  sheet: string,
  { kept, added }: CommentChanges,
): Promise<void> {
  const { file, part } = opened;
  const sheetPath = part.sheets.find(({ name }) => name === sheet)?.path;
  if (sheetPath === undefined) return;
  if (kept.size > 0) {
    const related = await relationshipsOf(file, sheetPath);
    for (const kind of ["comments", "threadedComment"])
      for (const path of partsOf(file, related, kind))
        edits.set(path, patchEntries(path, await edits.text(path), kept));
    for (const path of partsOf(file, related, "vmlDrawing"))
      edits.set(path, patchBoxes(await edits.text(path), kept));
  }
  if (added.length > 0) await addComments(edits, opened, sheetPath, added);
}
