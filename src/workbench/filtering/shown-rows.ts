import type { Worksheet } from "@univerjs/core";
import { type Filter, isActive } from "../../workbook/filter";
import type { Grid } from "../grid/grid";
import { tablesOn } from "../tables/tables";
import { bodyRows } from "./filter-rows";
import { type Filters, isOver } from "./filters";

/** How many rows the filters of a sheet leave, in a sentence; nothing where none is set. */
export function shownRows(grid: Grid, filters: Filters, sheet: Worksheet): string {
  const set = filters.on(sheet).filter(isActive);
  if (set.length === 0) return "";
  const tables = set.length > 1 ? tablesOn(grid, sheet) : [];
  return set
    .map((filter) => {
      const name = tables.find((table) => isOver(filter, table))?.name;
      return `${name ? `${name}: showing` : "Showing"} ${counted(filter, sheet)}`;
    })
    .join("; ");
}

function counted(filter: Filter, sheet: Worksheet): string {
  const rows = bodyRows(filter);
  const shown = rows.filter((row) => sheet.getRowVisible(row)).length;
  return `${shown} of ${rows.length} rows`;
}
