import { overlap } from "../../workbook/areas";
import { type Book, cellAt, isError, type Value } from "../../workbook/book";
import { cellsWithin } from "../../workbook/cells-within";
import { regionsOf } from "../../workbook/formula/regions";
import { fileError } from "../../workbook/patch/cell-xml";
import type { FormulaCell } from "./formula-cells";

/** Two programs that add in another order differ in the last digits; a spreadsheet shows fifteen. */
const relativeTolerance = 1e-9;
/** A spreadsheet shows the difference of two nearly equal numbers as 0. */
const nearlyNothing = 1e-14;

function alikeNumbers(one: number, other: number): boolean {
  const difference = Math.abs(one - other);
  if (one === 0 || other === 0) return difference <= nearlyNothing;
  return difference <= relativeTolerance * Math.max(Math.abs(one), Math.abs(other));
}

const isEmpty = (value: Value) => value === null || value === "" || value === 0;

/** Whether a computed value is the one that the file holds, as far as anybody could see. */
export function alike(saved: Value, computed: Value): boolean {
  if (typeof saved === "number" && typeof computed === "number")
    return alikeNumbers(saved, computed);
  if (isError(saved) && isError(computed))
    return fileError(saved.error) === fileError(computed.error);
  if (saved === null || computed === null) return isEmpty(saved) && isEmpty(computed);
  return saved === computed;
}

/** What a formula fills in a book, by place; undefined where the book lacks its sheet. */
function answerIn(book: Book, { sheet, row, column, cell }: FormulaCell) {
  const home = book.sheets.find(({ name }) => name === sheet);
  if (!home) return undefined;
  const extent = (cell.spill && cellAt(home, row, column)?.spill) ?? { rows: 1, columns: 1 };
  const values = new Map<string, Value>();
  for (const [down, across, { value }] of cellsWithin(home, { row, column, ...extent }))
    if (value !== null) values.set(`${down},${across}`, value);
  return { extent, values };
}

/** Whether two books hold the same in the cells that a formula fills, by a test of two values. */
export function sameAnswer(
  formula: FormulaCell,
  one: Book,
  other: Book,
  same: (one: Value, other: Value) => boolean,
): boolean {
  const [here, there] = [answerIn(one, formula), answerIn(other, formula)];
  if (!here || !there) return false;
  if (here.extent.rows !== there.extent.rows || here.extent.columns !== there.extent.columns)
    return false;
  return [...new Set([...here.values.keys(), ...there.values.keys()])].every((place) =>
    same(here.values.get(place) ?? null, there.values.get(place) ?? null),
  );
}

const filledBy = ({ row, column, cell: { spill } }: FormulaCell) => ({
  row,
  column,
  rows: spill?.rows ?? 1,
  columns: spill?.columns ?? 1,
});

/** Of some cells those that read none of the others: where a difference starts. All, if they read in a circle. */
export function rootsOf(cells: readonly FormulaCell[], book: Book): readonly FormulaCell[] {
  const roots = cells.filter((cell) => {
    const regions = regionsOf(cell.cell.formula, cell.sheet, book);
    return !cells.some(
      (other) =>
        other !== cell &&
        regions.some(({ sheet, area }) => sheet === other.sheet && overlap(area, filledBy(other))),
    );
  });
  return roots.length > 0 ? roots : cells;
}
