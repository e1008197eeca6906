/**
 * Formulas beside the first row of a table that answer each of its rows. Where rows are put in above that row
 * they go up with it, so that each answer stays beside the row that it belongs to.
 */
import { ICommandService, type IRange, type IUndoRedoItem, type Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { getMoveRangeCommandMutations, MoveRangeMutation } from "@univerjs/sheets";
import { areaOf } from "../../engine/ranges";
import { spilledRanges } from "../../engine/read-cells";
import type { Area, Table } from "../../workbook/book";
import { bodyOf } from "../../workbook/layout/filled-in";
import { type Change, changeBy } from "../following/changes";
import type { Grid } from "../grid/grid";

/** What they fill. */
export function besideRows(grid: Grid, worksheet: Worksheet, table: Table): Area[] {
  const { row, rows, column, columns } = bodyOf(table);
  return spilledRanges(grid.injector.get(FormulaDataModel), worksheet)
    .map(areaOf)
    .filter((its) => its.row === row && its.rows === rows)
    .filter((its) => its.column >= column + columns || its.column + its.columns <= column);
}

/** Puts the cell of a formula so many rows higher, as a part of the step; gives what that does to what names it. */
export function moveUp(
  { injector }: Grid,
  worksheet: Worksheet,
  { row, column }: Area,
  rows: number,
  step: IUndoRedoItem,
): Change {
  const cell = (row: number): IRange => ({
    startRow: row,
    endRow: row,
    startColumn: column,
    endColumn: column,
  });
  const [fromRange, toRange] = [cell(row), cell(row - rows)];
  const subUnitId = worksheet.getSheetId();
  const place = { fromUnitId: worksheet.getUnitId(), fromSubUnitId: subUnitId };
  const moved = injector.invoke((accessor) =>
    getMoveRangeCommandMutations(
      accessor,
      { ...place, fromRange, toRange },
      { includeSelection: false },
    ),
  );
  const commands = injector.get(ICommandService);
  const again = structuredClone(moved?.redos ?? []);
  for (const { id, params } of moved?.redos ?? []) commands.syncExecuteCommand(id, params);
  step.redoMutations.push(...again);
  step.undoMutations.unshift(...(moved?.undos ?? []));
  const told = { from: { subUnitId }, to: { subUnitId }, fromRange, toRange };
  return changeBy(MoveRangeMutation.id, told) as Change;
}
