import type { Worksheet } from "wasm-xlsxwriter";
import { areaAddress } from "../address";
import { type CellComment, LONGEST_COMMENT } from "../book";
import { escapeText } from "../xml-text";
import type { Library } from "./library";

/** The box around a comment, in pixels; as many characters stand in one of its lines. */
const BOX = { width: 200, line: 17, characters: 28, leastLines: 4, mostLines: 30 };

/** As high as its text; threads become comments of a cell alone. */
export function insertComment(
  library: Library,
  worksheet: Worksheet,
  { area, text }: CellComment,
): void {
  const lines = text
    .split("\n")
    .reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / BOX.characters)), 1);
  const shown = Math.min(Math.max(lines, BOX.leastLines), BOX.mostLines);
  const note = new library.Note(text.slice(0, LONGEST_COMMENT))
    .addAuthorPrefix(false)
    .setWidth(BOX.width)
    .setHeight(shown * BOX.line);
  worksheet.insertNote(area.row, area.column, note);
}

/** With the names of authors: the package sorts these, but not what refers to them. */
export function withAuthors(xml: string, comments: readonly CellComment[]): string {
  const authors = [...new Set(comments.map(({ author = "" }) => author))];
  const ids = new Map(
    comments.map(({ area, author = "" }) => [areaAddress(area), authors.indexOf(author)]),
  );
  const list = authors.map((author) => `<author>${escapeText(author)}</author>`).join("");
  return xml
    .replace(/<authors>.*<\/authors>/s, () => `<authors>${list}</authors>`)
    .replaceAll(/<comment ref="([A-Z]+\d+)" authorId="\d+"/g, (_, cell: string) => {
      return `<comment ref="${cell}" authorId="${ids.get(cell)}"`;
    });
}
