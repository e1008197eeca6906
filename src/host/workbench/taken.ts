import { IDefinedNamesService } from "@univerjs/engine-formula";
import { allTables } from "../../workbench/formulas/typed-formulas";
import type { Grid } from "../../workbench/grid/grid";
import type { Taken } from "../../workbook/layout/free-names";
import { openWorkbook } from "./sheet";

/** The names that the workbook uses, in small letters. */
export function takenNames(grid: Grid): Taken {
  const workbook = openWorkbook(grid);
  const names = grid.injector.get(IDefinedNamesService).getDefinedNameMap(workbook.getUnitId());
  const small = (named: readonly string[]) => new Set(named.map((name) => name.toLowerCase()));
  return {
    sheets: small(workbook.getSheets().map((sheet) => sheet.getName())),
    words: small([...Object.values(names ?? {}), ...allTables(grid)].map(({ name }) => name)),
  };
}
