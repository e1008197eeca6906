import { type Book, type GrowingCells, putCell, type Sheet } from "../../workbook/book";
import { cellsWithin } from "../../workbook/cells-within";
import type { FormulaCell } from "./formula-cells";

/** Puts back what a formula fills in the original, and nothing of what it filled when it was computed. */
function putBack(cells: GrowingCells, original: Sheet, computed: Sheet, its: FormulaCell): void {
  const { row, column, cell } = its;
  const area = { row, column, rows: 1, columns: 1, ...cell.spill };
  for (const [down, across] of cellsWithin(computed, area)) delete cells[down]?.[across];
  for (const [down, across, old] of cellsWithin(original, area)) putCell(cells, down, across, old);
}

/**
 * A computed book with the formulas of the original in all their cells, and with the values of the
 * original wherever these are to stay.
 */
export function restored(
  original: Book,
  computed: Book,
  formulas: readonly FormulaCell[],
  stays: (formula: FormulaCell) => boolean,
): Book {
  const withFormulas = new Set(formulas.map((its) => its.sheet));
  const sheets = computed.sheets.map((sheet, index): Sheet => {
    const home = original.sheets[index] as Sheet;
    if (!withFormulas.has(home.name)) return home;
    const cells: GrowingCells = {};
    for (const [row, line] of Object.entries(sheet.cells)) cells[Number(row)] = { ...line };
    for (const its of formulas) {
      if (its.sheet !== home.name) continue;
      const fresh = cells[its.row]?.[its.column];
      if (stays(its)) putBack(cells, home, sheet, its);
      else if (fresh) putCell(cells, its.row, its.column, { ...fresh, formula: its.cell.formula });
    }
    return { ...sheet, cells };
  });
  return { ...original, sheets };
}
