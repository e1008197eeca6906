import { relationshipsOf } from "../package/relationships";
import type { OpenedWorkbook } from "./read-workbook";

/** Whether a sheet of a file holds links: they stand beside its cells, not in them. */
export async function hasLinks({ file, part }: OpenedWorkbook, sheet: string): Promise<boolean> {
  const path = part.sheets.find(({ name }) => name === sheet)?.path;
  const related = path === undefined ? [] : await relationshipsOf(file, path);
  return related.some(({ type }) => type === "hyperlink");
}
