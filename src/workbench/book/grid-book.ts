/**
 * A workbook of ours as the grid opens it. How a formula was written travels in the custom data of its cell, so
 * that it stays where it belongs when rows are inserted or moved.
 */
import { BooleanNumber, type IWorkbookData, type IWorksheetData } from "@univerjs/core";
import { rangeOf } from "../../engine/ranges";
import { gridNames, roomFor, sheetIdAt, snapshotOf } from "../../engine/snapshot";
import { type Book, type Cell, putCell, type Sheet } from "../../workbook/book";
import { pixelsOfCharacters } from "../../workbook/column-width";
import type { PlannedBook, PlannedSheet } from "../../workbook/layout/planned";
import type { CellData } from "../grid/one-step";
import { ruleResources } from "./grid-rules";
import { gridStyle } from "./looks";

/** The grid sets its lines farther apart than the type that heights in points are meant for. */
const LINE_STRETCH = 1.15;
export const pixelsOfPoints = (points: number) => (points * 4 * LINE_STRETCH) / 3;
export const pointsOfPixels = (pixels: number) =>
  Math.round(((pixels * 3) / (4 * LINE_STRETCH)) * 100) / 100;

export const USUAL_COLUMN_WIDTH = 72;
export const USUAL_ROW_HEIGHT = 24;

/** Custom data of cells. */
export interface Carried {
  readonly formula?: string;
  /** The formula came as a dynamic array. */
  readonly dynamic?: boolean;
}

/** Custom data of rows and columns. */
export interface CarriedByLine {
  /** The look of its cells in which nothing has stood yet. */
  readonly look?: string;
}

function carry(cellData: CellData, row: number, column: number, carried: Carried): void {
  const cell = cellData[row]?.[column] ?? {};
  putCell(cellData, row, column, { ...cell, custom: { ...cell.custom, ...carried } });
}

type Line = { readonly custom?: object; readonly [key: string]: unknown };
type Lines = Readonly<Record<number, Line>>;

/** What each of them says of a line. */
const merged = (...all: readonly Lines[]): Lines => {
  const lines: Record<string, Line> = {};
  for (const one of all)
    for (const [line, says] of Object.entries(one)) {
      const custom = { ...lines[line]?.custom, ...says.custom };
      const carried = Object.keys(custom).length > 0 && { custom };
      lines[line] = { ...lines[line], ...says, ...carried };
    }
  return lines;
};

function frame(
  sheet: Sheet & Partial<PlannedSheet>,
  rowData: IWorksheetData["rowData"] = {},
): Partial<IWorksheetData> {
  const { rows = 0, columns = 0 } = sheet.frozen ?? {};
  const hiddenColumns = (sheet.hiddenColumns ?? []).map((column) => [
    column,
    { hd: BooleanNumber.TRUE },
  ]);
  const each = <S, T>(lines: Readonly<Record<number, S>> | undefined, as: (says: S) => T) =>
    Object.fromEntries(Object.entries<S>(lines ?? {}).map(([line, says]) => [line, as(says)]));
  const looking = (look: string) => ({ custom: { look } satisfies CarriedByLine });
  return {
    hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    freeze: { xSplit: columns, ySplit: rows, startRow: rows || -1, startColumn: columns || -1 },
    defaultColumnWidth: USUAL_COLUMN_WIDTH,
    defaultRowHeight: USUAL_ROW_HEIGHT,
    columnData: merged(
      each(sheet.columnWidths, (width) => ({ w: Math.round(pixelsOfCharacters(width)) })),
      Object.fromEntries(hiddenColumns),
      each(sheet.columnStyles, looking),
    ),
    rowData: merged(
      each(sheet.rowHeights, (height) => ({ h: pixelsOfPoints(height), ia: 0 })),
      rowData as Lines,
      each(sheet.rowStyles, looking),
    ),
    mergeData: (sheet.merged ?? []).map(rangeOf),
    showGridlines: sheet.gridlines === false ? BooleanNumber.FALSE : BooleanNumber.TRUE,
  };
}

export function gridBook(book: Book | PlannedBook, id: string): Partial<IWorkbookData> {
  const snapshot = snapshotOf(book, id, roomFor(book));
  for (const [index, sheet] of book.sheets.entries()) {
    const data = snapshot.sheets?.[sheetIdAt(index)] as Partial<IWorksheetData>;
    const cellData = data.cellData as CellData;
    for (const [row, line] of Object.entries(sheet.cells))
      for (const [column, { spill }] of Object.entries<Cell>(line))
        if (spill) carry(cellData, Number(row), Number(column), { dynamic: true });
    Object.assign(data, frame(sheet, data.rowData));
  }
  return {
    ...snapshot,
    styles: Object.fromEntries(
      Object.entries(book.styles).map(([key, style]) => [key, gridStyle(style)]),
    ),
    resources: [
      { name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(gridNames(book)) },
      ...ruleResources(book),
    ],
  };
}
