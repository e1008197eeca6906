/**
 * A formula with the name of a table, or of one sheet, has it wherever a copy is pasted: the cells that the grid
 * pastes in its place are those of the sheet there, and do not follow the table.
 */
import { fromGrid, toGrid } from "../../engine/dialect";
import { namesWithSheet } from "../../engine/local-names";
import { spellingOut } from "../../engine/spelled-out";
import { shiftedFormula } from "../../workbook/formula/shared";
import type { Carried } from "../book/grid-book";
import { writtenFormula } from "../book/written-formula";
import { vocabularyOf } from "../formulas/typed-formulas";
import type { Grid } from "../grid/grid";
import { gridFormulaAt } from "../grid/seen-cells";
import { type CellOn, pasteBehind } from "./pasted-cells";

export function pasteWords(grid: Grid): void {
  pasteBehind(grid, "dosewright.paste-words", ({ from, to }) => {
    const { sheet, row, column } = from;
    const data = sheet.getCellRaw(row, column);
    const text = gridFormulaAt(grid, sheet, row, column);
    const { formula: kept } = (data?.custom ?? {}) as Carried;
    if (text === undefined || kept === undefined) return undefined;
    const words = vocabularyOf(grid);
    const spellOut = spellingOut(words);
    const here = placeOf(from);
    const written = writtenFormula({ formula: fromGrid(text), data, value: null }, spellOut, here);
    if (written === undefined || spellOut(written, here) === written) return undefined;
    const known =
      sheet === to.sheet ? written : namesWithSheet(written, here.sheet, words.definedNames);
    const formula = shiftedFormula(known)(to.row - row, to.column - column);
    const f = toGrid(spellOut(formula, placeOf(to)));
    return { f, si: null, custom: { formula } satisfies Carried };
  });
}

const placeOf = ({ sheet, row, column }: CellOn) => ({ sheet: sheet.getName(), row, column });
