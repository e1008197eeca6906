/** Reading and writing of .xlsx, loaded when the first file is opened or saved. */
import type { FunctionsMetadata } from "../../build/built-functions";
import { NAMESPACE } from "../../help/reference";
import { valuesCopy } from "../../host/values-copy";
import type { Book } from "../../workbook/book";
import { unsaidCriteria } from "../../workbook/filter";
import { answersWithBlock } from "../../workbook/formula/future-functions";
import { functionNames } from "../../workbook/formula/stored-form";
import { type FilledIn, filledIn } from "../../workbook/layout/filled-in";
import type { PlannedBook } from "../../workbook/layout/planned";
import { commentChanges } from "../../workbook/patch/comment-changes";
import { namesBetween } from "../../workbook/patch/defined-names";
import { editsBetween } from "../../workbook/patch/edits";
import { layoutBetween } from "../../workbook/patch/layout-edits";
import { withLooks } from "../../workbook/patch/look-edits";
import { patchWorkbook } from "../../workbook/patch/patch-workbook";
import { ruleChanges } from "../../workbook/patch/rule-changes";
import { hasLinks } from "../../workbook/read/at-cells";
import { readCharts } from "../../workbook/read/charts";
import { readWorkbook } from "../../workbook/read/read-workbook";
import { withSpillFormats } from "../../workbook/spill-formats";
import { writeWorkbook } from "../../workbook/write/write-workbook";
import type { AtFirst, Source } from "../desk";
import type { FrameNow } from "../following/beside-cells";
import { shownStyles } from "./looks";

const namesOf = ({ functions }: FunctionsMetadata) => functionNames(functions.map(({ id }) => id));

export async function openFile(file: File, metadata: FunctionsMetadata): Promise<Source> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const opened = await readWorkbook(bytes, namesOf(metadata));
  return { kind: "file", opened, charts: await readCharts(opened) };
}

/** What of a file does not go with rows that are sorted, in a sentence. */
export async function notSorted(source: Source, sheet: string): Promise<string | undefined> {
  if (source.kind !== "file" || !(await hasLinks(source.opened, sheet))) return undefined;
  return "The links of this sheet stay where they are in the file, and do not go with the sorted rows.";
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
  /** What became of rows, columns and sheets since the file was opened, in words. */
  readonly reshapings: readonly string[];
  readonly atFirst: AtFirst;
}

/**
 * A file that was opened is changed in place, so that its charts, pictures and formats stay; unless its
 * rows, columns or sheets are others: then it is written anew, as a template always is.
 */
export async function saveFile(
  { book: onDesk, frame, source, reshapings, atFirst: shown }: ToSave,
  metadata: FunctionsMetadata,
): Promise<Saved> {
  const names = namesOf(metadata);
  const book = withSpillFormats(onDesk, isNewTo(source), answersWithBlock);
  const { lost, unread, cuts, ...kept } = frame;
  const titled = source.kind === "template" ? titleOf(source.planned) : {};
  const filled = filledIn({ ...kept, ...titled }, book);
  if (source.kind === "file" && reshapings.length === 0) {
    const { opened } = source;
    const atFirst = asShown(opened.book, shown);
    const edits = withLooks(editsBetween(opened.book, book), atFirst, book);
    const comments = commentChangesOf(shown, filled);
    const { bytes, stale } = await patchWorkbook(opened, edits, names, {
      tables: book.tables,
      layout: layoutBetween(atFirst, book),
      definedNames: namesBetween(atFirst.definedNames, book.definedNames),
      cuts,
      rules: ruleChangesOf(shown, filled),
      comments: new Map(comments.map(([name, { changes }]) => [name, changes])),
    });
    const left = comments.some(([, comment]) => comment.left);
    return { bytes, notes: [...stale, ...(left ? [threadsStay] : [])] };
  }
  const bytes = await writeWorkbook(filled, names);
  return {
    bytes,
    notes: [
      ...(source.kind === "file" ? [anew(reshapings)] : []),
      ...lostNotes(lost, unread, unsaidCriteria(filled)),
    ],
  };
}

/** What formulas that came with it fill keeps its formats, though the grid shows those of what they show. */
function isNewTo(source: Source): (formula: string) => boolean {
  const { sheets } = source.kind === "file" ? source.opened.book : source.planned;
  const formulas = sheets.flatMap(({ cells }) =>
    Object.values(cells).flatMap((line) => Object.values(line).map(({ formula }) => formula)),
  );
  const known = new Set(formulas);
  return (formula) => !known.has(formula);
}

/** What the grid made of a book when it was opened: nothing that it rounds or does not know is a change. */
const asShown = ({ sheets, styles, tables }: Book, { frames, definedNames }: AtFirst): Book => ({
  tables,
  definedNames,
  sheets: sheets.map(({ name, cells, columnStyles, filter }, index) => ({
    name,
    cells,
    ...frames[index],
    ...(filter && { filter }),
    ...(columnStyles && { columnStyles }),
  })),
  styles: shownStyles(styles),
});

/** Of each sheet by its name, how its rules changed since the file was opened. */
const ruleChangesOf = ({ beside }: AtFirst, { sheets }: Book) =>
  new Map(
    sheets.flatMap((sheet) => {
      const before = beside.find(({ name }) => name === sheet.name);
      return before ? [[sheet.name, ruleChanges(before, sheet)] as const] : [];
    }),
  );

/** Of each sheet by its name, how its comments changed since the file was opened. */
const commentChangesOf = ({ beside }: AtFirst, { sheets }: FilledIn) =>
  sheets.flatMap(({ name, comments }) => {
    const before = beside.find((sheet) => sheet.name === name)?.comments ?? [];
    const others = sheets.filter((sheet) => sheet.name !== name).flatMap((its) => its.comments);
    const elsewhere = new Set(others.map(({ id }) => id));
    return [[name, commentChanges(before, comments, elsewhere)] as const];
  });

const threadsStay =
  "Threads of comments whose cells were put on another sheet stand in the saved file as they did when it was opened.";

const anew = (reshapings: readonly string[]) =>
  `In this file ${new Intl.ListFormat("en-GB").format(reshapings)}, so it was written anew: with cells, formulas, names, tables, formats as they are shown here, entry rules, conditional formats, filters, comments (of a thread its texts), and those charts that a template could have; without its pictures and all else that came with the file.`;

function lostNotes(lost: number, unread: number, unsaid: number): string[] {
  const gone =
    lost === 1
      ? "one series or rule that names cells which are gone"
      : `${lost} series and rules that name cells which are gone`;
  const foreign =
    unread === 1
      ? "one entry rule or conditional format of a kind that is not written anew"
      : `${unread} entry rules and conditional formats of kinds that are not written anew`;
  const filters =
    unsaid === 1
      ? "what a column is filtered by, which only its own file can say: the rows stay hidden"
      : `what ${unsaid} columns are filtered by, which only their own file can say: the rows stay hidden`;
  const all = [
    ...(lost > 0 ? [gone] : []),
    ...(unread > 0 ? [foreign] : []),
    ...(unsaid > 0 ? [filters] : []),
  ];
  return all.length === 0 ? [] : [`Left out of the saved file: ${all.join("; ")}.`];
}

const titleOf = ({ title, question }: PlannedBook) => ({ title, question });

/** The workbook as it would be saved, with values in place of our formulas. */
export async function saveValues(saving: ToSave, metadata: FunctionsMetadata): Promise<Saved> {
  const { bytes, notes } = await saveFile(saving, metadata);
  const ids = metadata.functions.map(({ id }) => id);
  return { bytes: await valuesCopy(bytes, ids, NAMESPACE), notes };
}
