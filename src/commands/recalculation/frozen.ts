import { type Book, type Cell, type GrowingCells, putCell, type Sheet } from "../../workbook/book";
import { cellsOf, cellsWithin } from "../../workbook/cells-within";
import { reachIn, type SpillReach, withoutSpillMarks } from "../../workbook/formula/spill-ranges";
import { cellKey, type FormulaCell } from "./formula-cells";

/** Formulas that are computed as something else than they say, by the key of their cell. */
export type OtherFormulas = ReadonlyMap<string, string>;

/** A cell with its value in place of its formula. An empty text stays a formula: as a value the engine takes it for a blank cell. */
function frozenCell({ formula, spill: _spill, fixed: _fixed, spilled, ...rest }: Cell): Cell {
  const filled = formula !== undefined || spilled === true;
  return filled && rest.value === "" ? { ...rest, formula: '""' } : rest;
}

/** Keys of all cells that some formulas fill. */
function filled(book: Book, frozen: readonly FormulaCell[]): Set<string> {
  const keys = new Set(frozen.map(({ key }) => key));
  const sheets = new Map(book.sheets.map((sheet) => [sheet.name, sheet]));
  for (const { sheet, row, column, cell } of frozen) {
    const home = sheets.get(sheet);
    if (!home || !cell.spill) continue;
    for (const [down, across] of cellsWithin(home, { row, column, ...cell.spill }))
      keys.add(cellKey(sheet, down, across));
  }
  return keys;
}

function freezeSheet(
  sheet: Sheet,
  constants: ReadonlySet<string>,
  reach: SpillReach,
  others: OtherFormulas,
): Sheet {
  const cells: GrowingCells = {};
  for (const [row, column, cell] of cellsOf(sheet)) {
    const key = cellKey(sheet.name, row, column);
    if (constants.has(key)) putCell(cells, row, column, frozenCell(cell));
    else if (cell.formula === undefined) putCell(cells, row, column, cell);
    else {
      const formula = withoutSpillMarks(others.get(key) ?? cell.formula, sheet.name, reach);
      putCell(cells, row, column, { ...cell, formula });
    }
  }
  return { ...sheet, cells };
}

/** The book with some formulas turned into the values that they hold, so that the rest is computed from these. */
export function frozenBook(
  book: Book,
  frozen: readonly FormulaCell[],
  others: OtherFormulas = new Map(),
): Book {
  if (frozen.length === 0 && others.size === 0) return book;
  const anchors = new Set(frozen.map(({ key }) => key));
  const constants = filled(book, frozen);
  const reach = reachIn(book, (sheet, row, column) => anchors.has(cellKey(sheet, row, column)));
  return {
    ...book,
    sheets: book.sheets.map((sheet) => freezeSheet(sheet, constants, reach, others)),
    definedNames: book.definedNames.map((name) => ({
      ...name,
      formula: withoutSpillMarks(name.formula, name.sheet ?? "", reach),
    })),
  };
}
