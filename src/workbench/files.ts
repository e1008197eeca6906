/** Reading and writing of .xlsx, loaded when the first file is opened or saved. */
import type { FunctionsMetadata } from "../build/built-functions";
import { NAMESPACE } from "../help/reference";
import { valuesCopy } from "../host/values-copy";
import type { Book } from "../workbook/book";
import { functionNames } from "../workbook/formula/stored-form";
import { filledIn } from "../workbook/layout/filled-in";
import { editsBetween } from "../workbook/patch/edits";
import { patchWorkbook } from "../workbook/patch/patch-workbook";
import { type OpenedWorkbook, readWorkbook } from "../workbook/read/read-workbook";
import { writeWorkbook } from "../workbook/write/write-workbook";
import type { Source } from "./desk";

const namesOf = ({ functions }: FunctionsMetadata) => functionNames(functions.map(({ id }) => id));

export async function openFile(file: File, metadata: FunctionsMetadata): Promise<OpenedWorkbook> {
  return readWorkbook(new Uint8Array(await file.arrayBuffer()), namesOf(metadata));
}

export interface Saved {
  readonly bytes: Uint8Array;
  /** What the saved file lacks or holds out of date, one sentence each. */
  readonly notes: readonly string[];
}

/**
 * A file that was opened is changed in place, so that its charts, pictures and formats stay; a template
 * is built again with what was typed. Where rows, columns or sheets changed their places, the workbook
 * is written anew from its cells.
 */
export async function saveFile(
  book: Book,
  source: Source,
  reshaped: boolean,
  metadata: FunctionsMetadata,
): Promise<Saved> {
  const names = namesOf(metadata);
  if (reshaped) {
    const notes = [
      "Rows, columns or sheets changed, so the workbook was written anew: cells, formulas, names, tables and formats, without charts, pictures, validation and conditional formats.",
    ];
    return { bytes: await writeWorkbook(book, names), notes };
  }
  if (source.kind === "template")
    return { bytes: await writeWorkbook(filledIn(source.planned, book), names), notes: [] };
  const { bytes, stale } = await patchWorkbook(
    source.opened,
    editsBetween(source.opened.book, book),
    names,
    book.tables,
  );
  return { bytes, notes: stale };
}

/** The workbook as it would be saved, with values in place of our formulas. */
export async function saveValues(
  book: Book,
  source: Source,
  reshaped: boolean,
  metadata: FunctionsMetadata,
): Promise<Saved> {
  const { bytes, notes } = await saveFile(book, source, reshaped, metadata);
  const ids = metadata.functions.map(({ id }) => id);
  return { bytes: await valuesCopy(bytes, ids, NAMESPACE), notes };
}
