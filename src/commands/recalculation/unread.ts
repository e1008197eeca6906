/**
 * A log of a million rows has seldom a formula in it, and few of its columns are read. What no formula
 * can reach need not be computed with, nor sent to a thread and back.
 */
import { hull } from "../../workbook/areas";
import { type Area, type Book, type GrowingCells, putCell, type Sheet } from "../../workbook/book";
import { cellsOf, cellsWithin } from "../../workbook/cells-within";
import { regionsOf } from "../../workbook/formula/regions";
import { tokensOf } from "../../workbook/formula/tokens";

/** Functions whose cells are known only when they are computed. */
const elsewhere: ReadonlySet<string> = new Set(["INDIRECT", "OFFSET"]);

const looksElsewhere = (formula: string) =>
  tokensOf(formula).some(
    ({ kind, text }) => kind === "function" && elsewhere.has(text.toUpperCase()),
  );

function hasFormula(sheet: Sheet): boolean {
  for (const [, , { formula }] of cellsOf(sheet)) if (formula !== undefined) return true;
  return false;
}

function* formulasOf(book: Book): Generator<[formula: string, sheet: string]> {
  for (const sheet of book.sheets)
    for (const [, , { formula }] of cellsOf(sheet))
      if (formula !== undefined) yield [formula, sheet.name];
}

/** From the first to the last row and column that is named: between them A1:INDEX(…) finds its cells, too. */
function only(sheet: Sheet, [first, ...others]: readonly Area[]): Sheet {
  const cells: GrowingCells = {};
  if (first) for (const its of cellsWithin(sheet, hull([first, ...others]))) putCell(cells, ...its);
  return { ...sheet, cells };
}

/** The book without cells that no formula reads, in sheets that hold none. */
export function withoutUnread(book: Book): Book {
  const still = book.sheets.filter((sheet) => !hasFormula(sheet));
  if (still.length === 0) return book;
  const read = new Map(still.map(({ name }) => [name.toLowerCase(), [] as Area[]]));
  if (book.definedNames.some(({ formula }) => looksElsewhere(formula))) return book;
  const seen = new Set<string>();
  for (const [formula, sheet] of formulasOf(book)) {
    const key = `${sheet}\n${formula}`;
    if (seen.has(key)) continue;
    seen.add(key);
    if (looksElsewhere(formula)) return book;
    for (const region of regionsOf(formula, sheet, book))
      read.get(region.sheet.toLowerCase())?.push(region.area);
  }
  return {
    ...book,
    sheets: book.sheets.map((sheet) => {
      const areas = read.get(sheet.name.toLowerCase());
      return areas ? only(sheet, areas) : sheet;
    }),
  };
}

/** A computed book with only those sheets whose cells a calculation can change. */
export const changeable = (computed: Book): Book => ({
  ...computed,
  sheets: computed.sheets.map((sheet) => (hasFormula(sheet) ? sheet : { ...sheet, cells: {} })),
});

/** A computed book, with the sheets as they were that a calculation cannot change. */
export const completed = (computed: Book, original: Book): Book => ({
  ...computed,
  sheets: computed.sheets.map((sheet, index) => {
    const home = original.sheets[index] as Sheet;
    return hasFormula(home) ? sheet : home;
  }),
});
