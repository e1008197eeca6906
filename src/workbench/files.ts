/** Reading and writing of .xlsx, loaded when the first file is opened or saved. */
import type { FunctionsMetadata } from "../build/built-functions";
import { NAMESPACE } from "../help/reference";
import { valuesCopy } from "../host/values-copy";
import type { Book } from "../workbook/book";
import { functionNames } from "../workbook/formula/stored-form";
import { filledIn } from "../workbook/layout/filled-in";
import type { PlannedBook } from "../workbook/layout/planned";
import { editsBetween } from "../workbook/patch/edits";
import { patchWorkbook } from "../workbook/patch/patch-workbook";
import { keptAtCells } from "../workbook/read/at-cells";
import { readCharts } from "../workbook/read/charts";
import { readWorkbook } from "../workbook/read/read-workbook";
import { writeWorkbook } from "../workbook/write/write-workbook";
import type { Source } from "./desk";
import type { FrameNow } from "./following/beside-cells";

const namesOf = ({ functions }: FunctionsMetadata) => functionNames(functions.map(({ id }) => id));

export async function openFile(file: File, metadata: FunctionsMetadata): Promise<Source> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const opened = await readWorkbook(bytes, namesOf(metadata));
  return { kind: "file", opened, charts: await readCharts(opened) };
}

/** What of a file does not go with rows that are sorted, in a sentence. */
export async function notSorted(source: Source, sheet: string): Promise<string | undefined> {
  const kept = source.kind === "file" ? await keptAtCells(source.opened, sheet) : [];
  if (kept.length === 0) return undefined;
  return `The ${kept.join(" and ")} of this sheet stay where they are in the file, and do not go with the sorted rows.`;
}

export interface Saved {
  readonly bytes: Uint8Array;
  /** What the saved file lacks or holds out of date, one sentence each. */
  readonly notes: readonly string[];
}

/** What is on the desk: cells as they stand in the grid, and what the sheets hold beside them. */
export interface ToSave {
  readonly book: Book;
  readonly frame: FrameNow;
  readonly source: Source;
  readonly reshaped: boolean;
}

/**
 * A file that was opened is changed in place, so that its charts, pictures and formats stay; unless its
 * rows, columns or sheets changed their places: then it is written anew, as a template always is.
 */
export async function saveFile(
  { book, frame, source, reshaped }: ToSave,
  metadata: FunctionsMetadata,
): Promise<Saved> {
  const names = namesOf(metadata);
  if (source.kind === "file" && !reshaped) {
    const edits = editsBetween(source.opened.book, book);
    const { bytes, stale } = await patchWorkbook(source.opened, edits, names, book.tables);
    return { bytes, notes: stale };
  }
  const { lost, unread, ...kept } = frame;
  const titled = source.kind === "template" ? titleOf(source.planned) : {};
  const bytes = await writeWorkbook(filledIn({ ...kept, ...titled }, book), names);
  return { bytes, notes: [...(source.kind === "file" ? [ANEW] : []), ...lostNotes(lost, unread)] };
}

const ANEW =
  "Rows, columns or sheets of this file changed their places, so it was written anew: with cells, formulas, names, tables, formats, entry rules, conditional formats, and those charts that a template could have; without its pictures and all else that came with the file.";

function lostNotes(lost: number, unread: number): string[] {
  const gone =
    lost === 1
      ? "one series or rule that names cells which are gone"
      : `${lost} series and rules that name cells which are gone`;
  const foreign =
    unread === 1
      ? "one entry rule or conditional format of a kind that is not written anew"
      : `${unread} entry rules and conditional formats of kinds that are not written anew`;
  const all = [...(lost > 0 ? [gone] : []), ...(unread > 0 ? [foreign] : [])];
  return all.length === 0 ? [] : [`Left out of the saved file: ${all.join("; ")}.`];
}

const titleOf = ({ title, question }: PlannedBook) => ({ title, question });

/** The workbook as it would be saved, with values in place of our formulas. */
export async function saveValues(saving: ToSave, metadata: FunctionsMetadata): Promise<Saved> {
  const { bytes, notes } = await saveFile(saving, metadata);
  const ids = metadata.functions.map(({ id }) => id);
  return { bytes: await valuesCopy(bytes, ids, NAMESPACE), notes };
}
