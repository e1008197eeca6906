/** A workbook of ours as the grid takes it: cells, formulas, names, tables; looks are the grid page's own matter. */
import type { ICellData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { columnIndex } from "../workbook/address";
import { type Book, type Cell, isError, type Sheet, type Value } from "../workbook/book";
import { cellsOf } from "../workbook/cells-within";
import { endlessNames } from "../workbook/formula/endless-names";
import { nameToGrid, toGrid } from "./dialect";
import { hiddenRowData } from "./hidden-rows";
import { type SpellOut, spellingOut } from "./spelled-out";
import { expandTables } from "./structured";

// CellValueType and LocaleType of the grid; the enums themselves would tie this module to the package.
export const TEXT = 1;
const NUMBER = 2;
const BOOLEAN = 3;
const WHOLE_WORKBOOK = "AllDefaultWorkbook";

/** Where a cell of the grid keeps its formula as it was written, when the grid needs it in another form. */
export const WRITTEN = "formula";

/** The grid knows its sheets by id: their place in the book, which a renaming does not touch. */
export const sheetIdAt = (index: number): string => `sheet-${index}`;

const sheetIdOf = (book: Book, name: string): string =>
  sheetIdAt(book.sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase()));

export function gridValue(value: Value): Pick<ICellData, "v" | "t"> {
  if (value === null) return {};
  if (typeof value === "number") return { v: value, t: NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: BOOLEAN };
  return { v: isError(value) ? value.error : value, t: TEXT };
}

function gridCell(cell: Cell, expand: (formula: string) => string): ICellData | undefined {
  const look = cell.style === undefined ? {} : { s: cell.style };
  if (cell.spilled) return cell.style === undefined ? undefined : look;
  if (cell.formula !== undefined) {
    const expanded = expand(cell.formula);
    const kept = expanded === cell.formula ? {} : { custom: { [WRITTEN]: cell.formula } };
    return { f: toGrid(expanded), ...gridValue(cell.value), ...look, ...kept };
  }
  return { ...gridValue(cell.value), ...look };
}

function gridSheet(
  { tables }: Book,
  sheet: Sheet,
  spellOut: SpellOut,
  id: string,
  room: Room,
): Partial<IWorksheetData> {
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const [row, cells] of Object.entries(sheet.cells)) {
    const line: Record<number, ICellData> = {};
    for (const [column, cell] of Object.entries(cells)) {
      const place = { sheet: sheet.name, row: Number(row), column: Number(column) };
      const data = gridCell(cell, (formula) => spellOut(formula, place));
      if (!data) continue;
      line[Number(column)] = data;
    }
    cellData[Number(row)] = line;
  }
  return {
    id,
    name: sheet.name,
    cellData,
    rowData: hiddenRowData(sheet, tables),
    rowCount: room.rows,
    columnCount: room.columns,
  };
}

/** How large the sheets are made. A reference beyond the last row or column is an error. */
export interface Room {
  readonly rows: number;
  readonly columns: number;
}

const SPARE_ROWS = 1000;
const SPARE_COLUMNS = 50;
const references = /\$?\b([A-Z]{1,3})\$?([1-9]\d{0,6})\b/gi;

/** Room for every cell that is filled or named in a formula, and some more for answers that spill. */
export function roomFor(book: Book): Room {
  let rows = 0;
  let columns = 0;
  const reach = (row: number, column: number) => {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  };
  const reachOf = (formula: string) => {
    for (const [, column, row] of formula.matchAll(references))
      reach(Number(row) - 1, columnIndex(column as string));
  };
  for (const sheet of book.sheets)
    for (const [row, column, { formula }] of cellsOf(sheet)) {
      reach(row, column);
      if (formula) reachOf(formula);
    }
  for (const { formula } of book.definedNames) reachOf(formula);
  return {
    rows: Math.min(rows + SPARE_ROWS, 1_048_576),
    columns: Math.min(columns + SPARE_COLUMNS, 16_384),
  };
}

export function snapshotOf(book: Book, id: string, room: Room): Partial<IWorkbookData> {
  const spellOut = spellingOut(book);
  const sheets = book.sheets.map((sheet, index) =>
    gridSheet(book, sheet, spellOut, sheetIdAt(index), room),
  );
  return {
    id,
    name: "",
    styles: {},
    sheetOrder: sheets.map((sheet) => sheet.id as string),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id as string, sheet])),
  };
}

/** Without those that never end: a formula that holds one fails as it does with a name that is not there. */
export function gridNames(book: Book): Record<string, IDefinedNamesServiceParam> {
  const endless = endlessNames(book.definedNames);
  return Object.fromEntries(
    book.definedNames.flatMap(({ name, formula, sheet }, index) => {
      if (endless.has(name.toLowerCase())) return [];
      const id = `name-${index}`;
      const localSheetId = sheet === undefined ? WHOLE_WORKBOOK : sheetIdOf(book, sheet);
      const expanded = expandTables(formula, book.tables, { sheet: "", row: -1, column: -1 });
      return [[id, { id, name, formulaOrRefString: nameToGrid(expanded), localSheetId }]];
    }),
  );
}
