import { areaAddress } from "../address";
import type { Table } from "../book";
import type { OpenedWorkbook } from "../read/read-workbook";
import { tablePaths } from "../read/tables";
import { readXml } from "../xml";
import type { PackageEdits } from "./package-edits";
import { type Replacement, splice } from "./splice";

/** Tables that grew say so, and so do the filters over them. */
export async function patchTableAreas(
  edits: PackageEdits,
  { book, file, part }: OpenedWorkbook,
  tables: readonly Table[],
): Promise<void> {
  const ranges = new Map<string, readonly [before: string, now: string]>();
  for (const before of book.tables) {
    const now = tables.find(({ name }) => name === before.name);
    if (now && now.area.rows !== before.area.rows)
      ranges.set(before.name, [areaAddress(before.area), areaAddress(now.area)]);
  }
  if (ranges.size === 0) return;
  for (const { path: sheetPath } of part.sheets)
    for (const path of await tablePaths(file, sheetPath)) {
      const text = await edits.text(path);
      const replacements: Replacement[] = [];
      let range: readonly [string, string] | undefined;
      readXml(path, text, {
        open({ name, attributes, start, innerStart }) {
          if (name === "table") range = ranges.get(attributes.displayName ?? attributes.name ?? "");
          if (!range || (name !== "table" && name !== "autoFilter")) return;
          const [before, now] = range;
          const tag = text.slice(start, innerStart).replace(`"${before}"`, `"${now}"`);
          replacements.push({ start, end: innerStart, text: tag });
        },
      });
      if (replacements.length > 0) edits.set(path, splice(text, replacements));
    }
}
