import type { Grid } from "../../workbench/grid/grid";
import { valueAt } from "../../workbench/grid/seen-cells";
import { allTables } from "../../workbench/tables/tables";
import type { SheetTable } from "../host";
import { addressIn, openWorkbook, shown } from "./sheet";

/** See SheetHost.readTables. */
export function readTables(grid: Grid, firstHeader: string): readonly SheetTable[] {
  const workbook = openWorkbook(grid);
  const wanted = firstHeader.trim().toLowerCase();
  return allTables(grid).flatMap(({ name, sheet, area, columns, headerRow, totalsRow }) => {
    const worksheet = workbook.getSheetBySheetName(sheet);
    if (!worksheet || !headerRow || columns[0]?.trim().toLowerCase() !== wanted) return [];
    const body = area.rows - (totalsRow ? 2 : 1);
    const rows = Array.from({ length: body }, (_, row) =>
      columns.map((_, column) =>
        shown(valueAt(grid, worksheet, area.row + 1 + row, area.column + column)),
      ),
    );
    return [{ name, address: addressIn(worksheet, area), columns, rows }];
  });
}
