import { NAMESPACE } from "../../help/reference";
import type { Grid } from "../../workbench/grid/grid";
import { failingCells, formulaAt } from "../../workbench/grid/seen-cells";
import { reasonsIn } from "../../workbench/status/message-at";
import { addressOf, sheetPrefix } from "../../workbook/address";
import type { FailedCell } from "../host";
import { openWorkbook } from "./sheet";

const callsOurs = new RegExp(`(^|[^\\w.])${NAMESPACE}\\.`, "i");

/** See SheetHost.listFailures. Here the functions are always there, so that no cell loses its link to them. */
export function listFailures(grid: Grid): readonly FailedCell[] {
  const workbook = openWorkbook(grid);
  const reasons = reasonsIn(grid);
  return failingCells(grid).flatMap(({ sheetId, row, column, error, anchor }) => {
    const worksheet = workbook.getSheetBySheetId(sheetId);
    if (!worksheet) return [];
    const formula = formulaAt(grid, worksheet, anchor.row, anchor.column) ?? "";
    if (!callsOurs.test(formula)) return [];
    const sheet = sheetPrefix(worksheet.getName());
    const reason = reasons?.of({ sheet: worksheet.getName(), row, column }, error);
    const isSpilled = anchor.row !== row || anchor.column !== column;
    return [
      {
        address: sheet + addressOf(row, column),
        formula: `=${formula}`,
        value: error,
        error,
        ...(reason !== undefined && { reason }),
        lostLink: false,
        ...(isSpilled && { spilledFrom: sheet + addressOf(anchor.row, anchor.column) }),
      },
    ];
  });
}
