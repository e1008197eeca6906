import { relationshipsOf } from "../package/relationships";
import type { OpenedWorkbook } from "./read-workbook";

const words: readonly (readonly [kind: RegExp, word: string])[] = [
  [/^(?:comments|threadedComment)$/, "comments"],
  [/^hyperlink$/, "links"],
];

/** What a sheet of a file keeps at its cells without being part of them: "comments", "links". */
export async function keptAtCells(
  { file, part }: OpenedWorkbook,
  sheet: string,
): Promise<readonly string[]> {
  const path = part.sheets.find(({ name }) => name === sheet)?.path;
  const related = path === undefined ? [] : await relationshipsOf(file, path);
  return words.flatMap(([kind, word]) => (related.some(({ type }) => kind.test(type)) ? word : []));
}
