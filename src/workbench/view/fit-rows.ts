/**
 * Rows that a file gives no height are as high as their wrapped texts, as in every spreadsheet. The grid fits them
 * when something is typed into them, not when they come from a file.
 */
import {
  ICommandService,
  type IRange,
  type Workbook,
  type Worksheet,
  WrapStrategy,
} from "@univerjs/core";
import { MarkDirtyRowAutoHeightOperation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import type { Computed } from "../grid/computed";
import { type Grid, workbookOf } from "../grid/grid";

export function fitRows(grid: Grid, computed: Computed): void {
  const commands = grid.injector.get(ICommandService);
  const fitted = new WeakSet<Worksheet>();
  const fit = () => {
    const workbook = workbookOf(grid);
    const worksheet = workbook?.getActiveSheet();
    if (!workbook || !worksheet || fitted.has(worksheet)) return;
    fitted.add(worksheet);
    const ranges = wrappedRows(workbook, worksheet);
    if (ranges.length === 0) return;
    void commands.executeCommand(MarkDirtyRowAutoHeightOperation.id, {
      unitId: worksheet.getUnitId(),
      subUnitId: worksheet.getSheetId(),
      ranges,
      id: `fit ${worksheet.getSheetId()}`,
    });
  };
  // A sheet is measured once it is drawn.
  commands.onCommandExecuted(({ id }) => {
    if (id === SetWorksheetActiveOperation.id) requestAnimationFrame(fit);
  });
  computed.watch(fit);
}

function wrappedRows(workbook: Workbook, worksheet: Worksheet): IRange[] {
  const rows = new Set<number>();
  const styles = workbook.getStyles();
  worksheet.getCellMatrix().forValue((row, _, cell) => {
    const isText = typeof cell?.v === "string";
    if (isText && styles.getStyleByCell(cell)?.tb === WrapStrategy.WRAP) rows.add(row);
  });
  return [...rows]
    .filter((row) => worksheet.getRowManager().getRow(row)?.h === undefined)
    .map((row) => ({ startRow: row, endRow: row, startColumn: 0, endColumn: 0 }));
}
