import { areaAddress } from "../address";
import type { Table } from "../book";
import { type Filter, filteredArea } from "../filter";
import type { OpenedWorkbook } from "../read/read-workbook";
import { tablePaths } from "../read/tables";
import { readXml } from "../xml";
import { patchFilter } from "./filter-xml";
import type { PackageEdits } from "./package-edits";
import { type Replacement, splice } from "./splice";

/** Tables that grew say so, and so do the filters over them; those that ask for something else say what. */
export async function patchTables(
  edits: PackageEdits,
  { book, file, part }: OpenedWorkbook,
  tables: readonly Table[],
): Promise<void> {
  const ranges = new Map<string, readonly [before: string, now: string]>();
  const filters = new Map<string, Filter>();
  for (const before of book.tables) {
    const now = tables.find(({ name }) => name === before.name);
    if (!now) continue;
    if (now.area.rows !== before.area.rows)
      ranges.set(before.name, [areaAddress(before.area), areaAddress(now.area)]);
    if (JSON.stringify(now.filter) !== JSON.stringify(before.filter))
      filters.set(before.name, now.filter ?? { area: filteredArea(now), columns: [] });
  }
  if (ranges.size + filters.size === 0) return;
  for (const { path: sheetPath } of part.sheets)
    for (const path of await tablePaths(file, sheetPath)) {
      const text = await edits.text(path);
      const replacements: Replacement[] = [];
      let range: readonly [string, string] | undefined;
      let filter: Filter | undefined;
      readXml(path, text, {
        open({ name, attributes, start, innerStart }) {
          if (name === "table") {
            const its = attributes.displayName ?? attributes.name ?? "";
            [range, filter] = [ranges.get(its), filters.get(its)];
          }
          if (!range || (name !== "table" && name !== "autoFilter")) return;
          const [before, now] = range;
          const tag = text.slice(start, innerStart).replace(`"${before}"`, `"${now}"`);
          replacements.push({ start, end: innerStart, text: tag });
        },
      });
      if (replacements.length === 0 && !filter) continue;
      const grown = splice(text, replacements);
      edits.set(path, filter ? patchFilter(path, grown, filter) : grown);
    }
}
