/** The number format that a column keeps for cells in which nothing has stood yet. */
import type { Workbook, Worksheet } from "@univerjs/core";
import { SetColDataMutation } from "@univerjs/sheets";
import type { CarriedByLine } from "../book/grid-book";
import { lookOfColumn } from "../book/look-of-line";
import type { Step } from "../grid/one-step";
import { GENERAL, isGeneral } from "./code";

export const codeOfColumn = (workbook: Workbook, worksheet: Worksheet, column: number) =>
  workbook.getStyles().get(lookOfColumn(worksheet, column))?.n?.pattern ?? GENERAL;

/** The looks of columns with these codes, those left out that have them. */
export function columnSteps(
  workbook: Workbook,
  worksheet: Worksheet,
  codes: ReadonlyMap<number, string>,
): Step[] {
  const before: Record<number, { custom: CarriedByLine | null }> = {};
  const after: Record<number, { custom: CarriedByLine }> = {};
  const styles = workbook.getStyles();
  for (const [column, code] of codes) {
    if (code === codeOfColumn(workbook, worksheet, column)) continue;
    const look = lookOfColumn(worksheet, column);
    const { n: _, ...others } = styles.get(look) ?? {};
    const fresh = styles.setValue(isGeneral(code) ? others : { ...others, n: { pattern: code } });
    before[column] = { custom: look === undefined ? null : { look } };
    after[column] = { custom: fresh ? { look: fresh } : {} };
  }
  if (Object.keys(after).length === 0) return [];
  const mutation = (columnData: object) => ({
    id: SetColDataMutation.id,
    params: { unitId: workbook.getUnitId(), subUnitId: worksheet.getSheetId(), columnData },
  });
  return [{ todo: mutation(after), undo: mutation(before) }];
}
