/** Tables that take in what is typed or pasted right below them. */
import type { ICellData, Nullable, Workbook, Worksheet } from "@univerjs/core";
import { fromGrid } from "../../engine/dialect";
import { readValue } from "../../engine/read-cells";
import { spellingOut, type Vocabulary } from "../../engine/spelled-out";
import type { Book, Table } from "../../workbook/book";
import { bodyOf } from "../../workbook/layout/filled-in";
import type { Carried } from "../book/grid-book";
import { vocabularyOf } from "../formulas/typed-formulas";
import type { Grid } from "../grid/grid";
import type { CellData } from "../grid/one-step";
import { gridFormulaAt, valueAt } from "../grid/seen-cells";
import { columnsOf } from "./column-formulas";
import { type Entry, isNewRow } from "./new-row";
import { tablesOn } from "./tables";

export interface Growth {
  readonly table: Table;
  readonly rows: number;
}

export const holds = (cell: Nullable<ICellData>) =>
  Boolean(cell?.f || cell?.si) || (cell?.v !== undefined && cell.v !== null && cell.v !== "");

/** The tables below whose last row new ones come to stand in blank cells, and how many of them. */
export function growths(
  grid: Grid,
  workbook: Workbook,
  worksheet: Worksheet,
  typed: CellData,
): Growth[] {
  const tables = tablesOn(grid, worksheet).filter(
    ({ area, totalsRow }) => !totalsRow && typed[area.row + area.rows] !== undefined,
  );
  if (tables.length === 0) return [];
  const words = vocabularyOf(grid);
  const sheets = workbook.getSheets().map((one) => ({ name: one.getName(), cells: {} }));
  const book: Book = { sheets, definedNames: words.definedNames, tables: [], styles: {} };
  return tables.flatMap((table) => {
    const columns = columnsOf(table);
    const below = table.area.row + table.area.rows;
    const { row: first, rows: held } = bodyOf(table);
    const formula = (row: number, column: number) => {
      const text = gridFormulaAt(grid, worksheet, row, column);
      return text === undefined ? undefined : fromGrid(text);
    };
    const isNew = (row: number) =>
      columns.every((column) => isBlank(grid, worksheet, row, column)) &&
      isNewRow(entriesOf(typed, row, table, words), {
        table,
        row,
        book,
        valuesOf: (column) =>
          Array.from({ length: held }, (_, at) => valueAt(grid, worksheet, first + at, column)),
        lastFormula: (column) => formula(below - 1, column),
      });
    let rows = 0;
    while (isNew(below + rows)) rows++;
    return rows > 0 ? [{ table, rows }] : [];
  });
}

/** What is typed into a row below a table. */
function entriesOf(typed: CellData, row: number, table: Table, words: Vocabulary): Entry[] {
  const spellOut = spellingOut(withRows(words, table, row + 1 - table.area.row));
  return columnsOf(table).flatMap((column): Entry[] => {
    const cell = typed[row]?.[column];
    if (!holds(cell)) return [];
    const entry = { column, value: readValue(cell) };
    if (!cell?.f) return [entry];
    const formula = fromGrid(cell.f);
    const { formula: written = formula } = (cell.custom ?? {}) as Carried;
    const grown = spellOut(written, { sheet: table.sheet, row, column });
    return [{ ...entry, formula, grown, ofRow: /\[\s*@|\[#this row\]/i.test(written) }];
  });
}

/** The same words, once a table has so many rows. */
export const withRows = ({ definedNames, tables }: Vocabulary, table: Table, rows: number) => ({
  definedNames,
  tables: tables.map((one) =>
    one.name === table.name ? { ...one, area: { ...one.area, rows } } : one,
  ),
});

const isBlank = (grid: Grid, worksheet: Worksheet, row: number, column: number) =>
  !worksheet.getCellRaw(row, column)?.f && valueAt(grid, worksheet, row, column) === null;
