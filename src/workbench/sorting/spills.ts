/**
 * What a formula fills in several rows cannot go with rows that are sorted: it stays, and is computed anew from
 * what then stands there. The rows stay whole all the same where it has the columns to itself.
 */
import { holdsCell } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { answersWithBlock } from "../../workbook/formula/future-functions";
import { regionsOf } from "../../workbook/formula/regions";
import { bookOf, isFilled, linesOf, type SeenSheet } from "./block";

export interface Spill {
  readonly area: Area;
  /** No other cell among the rows stands in its columns. */
  readonly alone: boolean;
  /** It answers each of the rows, out of a range over the same ones: so its answers follow them. */
  readonly byRow: boolean;
}

/** All that formulas fill on the sheet, if only one cell today, as seen from the rows that would be sorted. */
export function spillsBeside(sheet: SeenSheet, rows: Area): Spill[] {
  return [...sheet.cells].flatMap(([row, line]) =>
    [...line].flatMap(([column, { formula, spill }]) => {
      if (formula === undefined || (!spill && !answersWithBlock(formula))) return [];
      const area = { row, column, rows: 1, columns: 1, ...spill };
      const alone = isAlone(sheet, area, rows);
      // One among others, each with the answer for its own row, goes with that.
      if (!spill && !alone) return [];
      return [{ area, alone, byRow: isByRow(sheet, formula, area, rows) }];
    }),
  );
}

function isAlone(sheet: SeenSheet, area: Area, rows: Area): boolean {
  const columns = Array.from({ length: area.columns }, (_, at) => area.column + at);
  return linesOf(rows).every((row) =>
    columns.every((column) => holdsCell(area, row, column) || !isFilled(sheet, row, column)),
  );
}

const isByRow = (sheet: SeenSheet, formula: string, area: Area, rows: Area): boolean =>
  area.row <= rows.row &&
  area.row + area.rows >= rows.row + rows.rows &&
  !answersWithBlock(formula) &&
  regionsOf(formula, sheet.name, bookOf(sheet)).some(
    (read) =>
      read.sheet === sheet.name && read.area.row === area.row && read.area.rows === area.rows,
  );
