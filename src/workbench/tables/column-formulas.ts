/** The formulas that the columns of a table repeat from row to row, in the grid. */
import type { ICellData, Worksheet } from "@univerjs/core";
import { FormulaDataModel, LexerTreeBuilder } from "@univerjs/engine-formula";
import { answeredRanges } from "../../engine/read-cells";
import type { Table } from "../../workbook/book";
import { shiftedFormula } from "../../workbook/formula/shared";
import { bodyOf } from "../../workbook/layout/filled-in";
import type { Carried } from "../book/grid-book";
import type { Written } from "../formulas/read-anew";
import type { Grid } from "../grid/grid";
import { gridFormulaAt } from "../grid/seen-cells";
import { type Repeated, repeatedAt } from "./repeated-formula";

export const columnsOf = ({ area }: Table): number[] =>
  Array.from({ length: area.columns }, (_, at) => area.column + at);

/** By column, for rows that come to stand before the row `at`. What fills other cells beside its own is not repeated. */
export function columnFormulas(
  grid: Grid,
  worksheet: Worksheet,
  table: Table,
  at: number,
): Map<number, Repeated> {
  const spills = answeredRanges(grid.injector.get(FormulaDataModel), worksheet).filter(
    ({ startRow, endRow, startColumn, endColumn }) => endRow > startRow || endColumn > startColumn,
  );
  const fills = (row: number, column: number) =>
    spills.some(({ startRow, startColumn }) => startRow === row && startColumn === column);
  const found = new Map<number, Repeated>();
  for (const column of columnsOf(table)) {
    const repeated = repeatedAt(at, bodyOf(table), (row) =>
      gridFormulaAt(grid, worksheet, row, column)?.slice(1),
    );
    if (repeated && !repeated.rows.some((row) => fills(row, column))) found.set(column, repeated);
  }
  return found;
}

/** A cell that holds in its row the formula of another of its column. */
export function cellAsIn(
  grid: Grid,
  worksheet: Worksheet,
  column: number,
  source: number,
  row: number,
): ICellData {
  const text = gridFormulaAt(grid, worksheet, source, column) ?? "";
  const { formula, dynamic } = (worksheet.getCellRaw(source, column)?.custom ?? {}) as Carried;
  const written = formula !== undefined && shiftedFormula(formula)(row - source, 0);
  const custom = { ...(written !== false && { formula: written }), ...(dynamic && { dynamic }) };
  const lexer = grid.injector.get(LexerTreeBuilder);
  return { f: lexer.moveFormulaRefOffset(text, 0, row - source), custom };
}

/** What such cells hold as it was written, of what is written in the whole column. */
export const writtenAsIn = (
  written: readonly Written[],
  column: number,
  source: number,
  rows: readonly number[],
): Written[] =>
  written
    .filter((one) => one.column === column && one.row === source)
    .flatMap((one) => {
      const shifted = shiftedFormula(one.written);
      return rows.map((row) => ({ row, column, written: shifted(row - source, 0) }));
    });
