import { namesOf } from "../../workbench/book/read-grid";
import type { Grid } from "../../workbench/grid/grid";
import { allTables } from "../../workbench/tables/tables";
import type { Taken } from "../../workbook/layout/free-names";
import { openWorkbook } from "./sheet";

/** The names that the workbook uses, in small letters. */
export function takenNames(grid: Grid): Taken {
  const workbook = openWorkbook(grid);
  const small = (named: readonly string[]) => new Set(named.map((name) => name.toLowerCase()));
  return {
    sheets: small(workbook.getSheets().map((sheet) => sheet.getName())),
    words: small([...namesOf(grid), ...allTables(grid)].map(({ name }) => name)),
  };
}
