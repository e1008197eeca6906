import type { CellComment } from "../book";
import type { WorkbookPackage } from "../package/open-package";
import { partsOf, relationshipsOf } from "../package/relationships";
import { readShortXml } from "../xml";
import { unescapeText } from "../xml-text";
import { areaIfAny } from "./place";

/** Names of people by their ids. */
type People = ReadonlyMap<string, string>;

/** Who takes part in threads of comments. */
export async function readPeople(file: WorkbookPackage, workbookPath: string): Promise<People> {
  const people = new Map<string, string>();
  for (const path of partsOf(file, await relationshipsOf(file, workbookPath), "person"))
    readShortXml(path, await file.text(path), {
      open({ name, attributes: { id, displayName } }) {
        if (name === "person" && id && displayName) people.set(id, displayName);
      },
    });
  return people;
}

/** The comments of a sheet: those of a cell alone, and threads, each as one text. */
export async function readComments(
  file: WorkbookPackage,
  sheetPath: string,
  people: People,
): Promise<CellComment[]> {
  const related = await relationshipsOf(file, sheetPath);
  const threads: Said[] = [];
  for (const path of partsOf(file, related, "threadedComment"))
    threads.push(...said(path, await file.text(path), "threadedComment"));
  const comments = new Map<string, CellComment>();
  const put = (cell: string, says: Pick<CellComment, "text" | "author" | "thread">) => {
    // A comment at no cell is left out; it stays in the file as it is.
    const area = areaIfAny(cell);
    if (area) comments.set(cell, { ...says, area, id: `${sheetPath} ${cell}` });
  };
  for (const { cell, by, text } of threads) {
    const before = comments.get(cell)?.text;
    const line = [people.get(by), text].filter(Boolean).join(": ");
    put(cell, { text: before === undefined ? line : `${before}\n${line}`, thread: true });
  }
  // A thread stands a second time among the others, for programs that know no threads.
  const threaded = new Set(comments.keys());
  for (const path of partsOf(file, related, "comments"))
    for (const { cell, by, text } of said(path, await file.text(path), "comment"))
      if (!threaded.has(cell)) put(cell, { text, ...(by !== "" && { author: by }) });
  return [...comments.values()];
}

interface Said {
  readonly cell: string;
  readonly by: string;
  readonly text: string;
}

/** Of rich text the runs are joined. */
function said(path: string, xml: string, element: "comment" | "threadedComment"): Said[] {
  const authors: string[] = [];
  const all: Said[] = [];
  let inner = "";
  let taken = false;
  let cell = "";
  let by = "";
  readShortXml(path, xml, {
    open({ name, attributes }) {
      if (name === element) {
        [cell, inner] = [(attributes.ref ?? "").toUpperCase(), ""];
        by = attributes.personId ?? authors[Number(attributes.authorId)] ?? "";
      }
      if (name === "author") inner = "";
      taken = name === "author" || name === "t" || (name === "text" && element !== "comment");
    },
    close(name) {
      taken = false;
      if (name === "author") authors.push(unescapeText(inner).trim());
      if (name !== element) return;
      all.push({ cell, by, text: unescapeText(inner).replaceAll("\r\n", "\n").trim() });
    },
    text(run) {
      if (taken) inner += run;
    },
  });
  return all;
}
