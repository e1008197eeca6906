import { areaAddress } from "../../workbook/address";
import type { Area, Sheet } from "../../workbook/book";

/** Excel takes lists of addresses up to 8,192 characters. */
const LONGEST_LIST = 4000;

/** The cells of each style as rectangles: equal neighbours in a row are joined, then equal rows below. */
export function styleAreas(sheet: Sheet): ReadonlyMap<string, readonly Area[]> {
  const areas = new Map<string, Area[]>();
  const open = new Map<string, Area>();
  for (const [rowKey, cells] of Object.entries(sheet.cells)) {
    for (const run of runsOf(Number(rowKey), cells)) {
      const list = areas.get(run.style) ?? [];
      areas.set(run.style, list);
      const key = `${run.style} ${run.area.column} ${run.area.columns}`;
      const above = open.get(key);
      if (above !== undefined && above.row + above.rows === run.area.row) {
        const grown = { ...above, rows: above.rows + 1 };
        list[list.indexOf(above)] = grown;
        open.set(key, grown);
      } else {
        list.push(run.area);
        open.set(key, run.area);
      }
    }
  }
  return areas;
}

function runsOf(row: number, cells: Sheet["cells"][number]): { style: string; area: Area }[] {
  const runs: { style: string; area: Area }[] = [];
  for (const [columnKey, { style }] of Object.entries(cells)) {
    if (style === undefined) continue;
    const column = Number(columnKey);
    const last = runs.at(-1);
    if (last?.style === style && last.area.column + last.area.columns === column) {
      last.area = { ...last.area, columns: last.area.columns + 1 };
    } else {
      runs.push({ style, area: { row, column, rows: 1, columns: 1 } });
    }
  }
  return runs;
}

/** Areas as lists of addresses, each short enough for one request. */
export function addressLists(areas: readonly Area[]): string[] {
  const lists: string[] = [];
  for (const area of areas) {
    const address = areaAddress(area);
    const last = lists.at(-1);
    if (last !== undefined && last.length + address.length < LONGEST_LIST) {
      lists[lists.length - 1] = `${last},${address}`;
    } else {
      lists.push(address);
    }
  }
  return lists;
}
