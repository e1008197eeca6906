/** Comments that a file has not yet: their entries, their boxes, and the parts for them where there are none. */
import type { CellComment } from "../book";
import { partsOf, relationshipsOf } from "../package/relationships";
import type { OpenedWorkbook } from "../read/read-workbook";
import { prefixed, readXml, type XmlElement } from "../xml";
import { escapeText, unescapeText } from "../xml-text";
import { boxDrawing, withBoxes } from "./comment-boxes";
import { cellOf } from "./comment-changes";
import { textXml } from "./comment-text";
import type { PackageEdits } from "./package-edits";
import { upTo } from "./sheet-order";
import { type Replacement, splice } from "./splice";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const types = {
  comments: "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml",
  drawing: "application/vnd.openxmlformats-officedocument.vmlDrawing",
};

const noComments = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<comments xmlns="${main}"><authors/><commentList/></comments>`;

const beforeDrawing = upTo("drawing");

export async function addComments(
  edits: PackageEdits,
  { file, part }: OpenedWorkbook,
  sheetPath: string,
  added: readonly CellComment[],
): Promise<void> {
  const related = await relationshipsOf(file, sheetPath);
  const folder = part.path.slice(0, part.path.lastIndexOf("/") + 1);
  let [path] = partsOf(file, related, "comments");
  if (path === undefined) {
    path = edits.freePath(`${folder}comments`, ".xml");
    await edits.add(path, noComments, types.comments, sheetPath, "comments");
  }
  edits.set(path, withEntries(path, await edits.text(path), added));

  const sheet = await edits.text(sheetPath);
  const { id, root, place } = placeOfDrawing(sheetPath, sheet);
  const drawing = related.find((its) => its.id === id)?.path;
  if (drawing !== undefined && file.has(drawing))
    return edits.set(drawing, withBoxes(await edits.text(drawing), added));
  if (id !== undefined) return;
  const fresh = edits.freePath(`${folder}drawings/vmlDrawing`, ".vml");
  const boxes = boxDrawing(added);
  const freshId = await edits.add(fresh, boxes, types.drawing, sheetPath, "vmlDrawing");
  const text = drawingXml(root, freshId);
  edits.set(sheetPath, splice(sheet, [{ start: place, end: place, text }]));
}

/** The id that a sheet calls its drawing by; where its element would stand if it has none. */
function placeOfDrawing(path: string, xml: string) {
  let id: string | undefined;
  let root: XmlElement | undefined;
  let depth = 0;
  let place = 0;
  readXml(path, xml, {
    open(element) {
      root ??= element;
      if (depth++ === 1 && element.name === "legacyDrawing")
        id = prefixed(element.attributes, "id") ?? "";
    },
    close(name, end) {
      if (--depth === 1 && beforeDrawing.has(name)) place = end;
    },
  });
  return { id, root: root as XmlElement, place };
}

/** Called by the name that the sheet has for relationships, or by one of its own. */
function drawingXml({ prefix, attributes }: XmlElement, id: string): string {
  const declared = Object.keys(attributes).find((name) => attributes[name] === office);
  const [, own] = /^xmlns:(.+)$/.exec(declared ?? "") ?? [];
  const tag = `<${prefix}legacyDrawing`;
  return own ? `${tag} ${own}:id="${id}"/>` : `${tag} xmlns:r="${office}" r:id="${id}"/>`;
}

interface List {
  readonly element: XmlElement;
  readonly end: number;
  readonly innerEnd: number;
}

/** A part with further comments, and with those of their authors that it does not know. */
function withEntries(path: string, xml: string, added: readonly CellComment[]): string {
  const known: string[] = [];
  const lists = new Map<string, List>();
  const open: XmlElement[] = [];
  let said = "";
  readXml(path, xml, {
    open(element) {
      open.push(element);
      said = "";
    },
    text(run) {
      said += run;
    },
    close(name, end, innerEnd) {
      const element = open.pop() as XmlElement;
      if (name === "author") known.push(unescapeText(said).trim());
      lists.set(name, { element, end, innerEnd });
    },
  });
  const root = lists.get("comments")?.element;
  if (!root) return xml;
  const { prefix } = root;
  const tag = (name: string, attributes: string, inner: string) =>
    `<${prefix}${name}${attributes}>${inner}</${prefix}${name}>`;
  const names = [...new Set(added.map(({ author = "" }) => author))];
  const fresh = names.filter((name) => !known.includes(name));
  const authors = [...known, ...fresh];
  const entries = added.map((comment) => {
    const { text, author = "" } = comment;
    const attributes = ` ref="${cellOf(comment)}" authorId="${authors.indexOf(author)}"`;
    return tag("comment", attributes, tag("text", "", textXml(prefix, text)));
  });
  const into = (name: string, inner: string, otherwise: number): Replacement[] => {
    const list = lists.get(name);
    if (inner === "") return [];
    if (!list) return [{ start: otherwise, end: otherwise, text: tag(name, "", inner) }];
    const { element, end, innerEnd } = list;
    if (!element.selfClosing) return [{ start: innerEnd, end: innerEnd, text: inner }];
    const { start, innerStart } = element;
    const opening = xml.slice(start, innerStart).replace(/\s*\/>$/, ">");
    return [{ start, end, text: `${opening}${inner}</${prefix}${name}>` }];
  };
  const newAuthors = fresh.map((name) => tag("author", "", escapeText(name))).join("");
  return splice(xml, [
    ...into("authors", newAuthors, root.innerStart),
    ...into("commentList", entries.join(""), lists.get("authors")?.end ?? root.innerStart),
  ]);
}
