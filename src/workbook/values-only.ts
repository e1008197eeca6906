import { addressOf } from "./address";
import { type Book, type GrowingCells, putCell, type Sheet } from "./book";
import { cellsOf } from "./cells-within";
import { ourNames, recentNames, usesOurs, usesRecent } from "./formula/ours";
import { reachIn, type SpillReach, withoutSpillMarks } from "./formula/spill-ranges";
import type { FunctionNames } from "./formula/stored-form";
import { freeSheetName } from "./layout/free-names";
import { editsBetween } from "./patch/edits";
import { changeFormulaElements } from "./patch/formula-elements";
import { withLooks } from "./patch/look-edits";
import { PackageEdits } from "./patch/package-edits";
import { type PatchedWorkbook, patchSheets } from "./patch/patch-workbook";
import { staleParts } from "./patch/stale";
import { addTextSheet } from "./patch/text-sheet";
import type { OpenedWorkbook } from "./read/read-workbook";
import { tablePaths } from "./read/tables";
import { withSpillFormats } from "./spill-formats";

/** Stands for the sheet of what is no cell. */
const NAMES = "(defined name)";

interface Replaced {
  readonly sheet: string;
  readonly address: string;
  readonly formula: string;
}

/** One sheet with values in place of formulas that not every program computes; what is replaced is noted. */
function sheetOfValues(
  sheet: Sheet,
  isReplaced: (formula: string) => boolean,
  reach: SpillReach,
  replaced: Replaced[],
): Sheet {
  const cells: GrowingCells = {};
  for (const [row, column, cell] of cellsOf(sheet)) {
    const { formula, spill: _spill, fixed: _fixed, ...rest } = cell;
    if (formula === undefined) putCell(cells, row, column, cell);
    else if (isReplaced(formula)) {
      replaced.push({ sheet: sheet.name, address: addressOf(row, column), formula });
      putCell(cells, row, column, rest);
    } else {
      const without = withoutSpillMarks(formula, sheet.name, reach);
      putCell(cells, row, column, { ...cell, formula: without });
    }
  }
  return { ...sheet, cells };
}

/** The rows of a column that hold the same formula, as a column of a table does, in one line. */
function gathered(replaced: readonly Replaced[]): Replaced[] {
  const lines: (Replaced & { last: string })[] = [];
  const open = new Map<string, (typeof lines)[number]>();
  for (const one of replaced) {
    const key = (address: string) => `${one.sheet}!${address}=${one.formula}`;
    let line = open.get(key(one.address));
    if (line) line.last = one.address;
    else {
      line = { ...one, last: one.address };
      lines.push(line);
    }
    if (one.sheet !== NAMES) open.set(key(below(one.address)), line);
  }
  return lines.map(({ last, address, ...line }) => ({
    ...line,
    address: last === address ? address : `${address}:${last}`,
  }));
}

/** B4 → B5. */
const below = (address: string) => address.replace(/\d+$/, (row) => String(Number(row) + 1));

const noteOf = (version: string, replaced: readonly Replaced[]): string[][] => [
  ["Values in place of formulas"],
  [`This copy is for readers without the add-in. ${version} computed the values.`],
  [
    "The formulas below, those of the add-in and those that older programs do not compute, were replaced; the workbook that they come from has them still.",
  ],
  [],
  ["Sheet", "Cell", "Formula"],
  ...gathered(replaced).map(({ sheet, address, formula }) => [sheet, address, `=${formula}`]),
];

/**
 * The copy for a colleague without the add-in: the same workbook with the values of `computed` in
 * place of our formulas and of those with functions that many programs lack, and a sheet that says what computed them and lists each formula.
 */
export async function valuesOnly(
  opened: OpenedWorkbook,
  computed: Book,
  names: FunctionNames,
  version: string,
): Promise<PatchedWorkbook> {
  const { book, file, part } = opened;
  const namesWithOurs = ourNames(book, names);
  const isOurs = (formula: string) => usesOurs(formula, names, namesWithOurs);
  const namesWithRecent = recentNames(book);
  const isReplaced = (formula: string) => isOurs(formula) || usesRecent(formula, namesWithRecent);
  // Of every formula, not only of those that go: the mark itself is what many programs lack.
  const reach = reachIn(computed, () => true);
  const replaced: Replaced[] = [];
  const sheets = computed.sheets.map((sheet) => sheetOfValues(sheet, isReplaced, reach, replaced));

  const edits = new PackageEdits(file);
  const values = editsBetween(book, { ...computed, sheets });
  const shown = withSpillFormats(computed, isReplaced, (formula) => !isOurs(formula));
  await patchSheets(edits, opened, withLooks(values, computed, shown), names);
  const renamed = changeFormulaElements(
    part.path,
    await edits.text(part.path),
    "definedName",
    names,
    (formula, { attributes }) => {
      if (!isOurs(formula)) return withoutSpillMarks(formula, "", reach);
      replaced.push({ sheet: NAMES, address: attributes.name ?? "", formula });
      return null;
    },
  );
  edits.set(part.path, renamed);
  for (const sheet of part.sheets)
    for (const path of await tablePaths(file, sheet.path)) {
      const text = await edits.text(path);
      const without = changeFormulaElements(
        path,
        text,
        "calculatedColumnFormula",
        names,
        (formula) => (isOurs(formula) ? null : withoutSpillMarks(formula, sheet.name, reach)),
      );
      if (without !== text) edits.set(path, without);
    }
  const taken = new Set(book.sheets.map(({ name }) => name.toLowerCase()));
  const note = noteOf(version, replaced);
  await addTextSheet(edits, part, freeSheetName("Values only", taken), note, [24, 12, 90]);
  const changed = editsBetween(book, computed).size > 0;
  const bytes = await file.rewrite(edits.changes);
  return { bytes, stale: staleParts(file, { values: changed, parts: true }) };
}
