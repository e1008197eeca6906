import { type Area, type Book, type Cell, cellAt, type Sheet } from "../../book";
import { cellsOf } from "../../cells-within";
import { sheetOf } from "../../formula/regions";
import type { CellsOf } from "../../layout/planned";
import { WorkbookRefusal } from "../../workbook-refusal";
import { areaIn } from "../place";

/** More points than this are not drawn. */
const MOST_CELLS = 10_000;

/** One row or column of cells of one sheet: 'Mill log'!$B$4:$B$33; undefined for anything else. */
export function cellsIn(reference: string | undefined): CellsOf | undefined {
  const mark = (reference ?? "").lastIndexOf("!") + 1;
  if (reference === undefined || mark === 0 || reference.includes("[")) return undefined;
  try {
    const area = areaIn(reference.slice(mark));
    const isLine = area.rows === 1 || area.columns === 1;
    if (!isLine || area.rows * area.columns > MOST_CELLS) return undefined;
    return { sheet: sheetOf(reference.slice(0, mark)), area };
  } catch (problem) {
    if (problem instanceof WorkbookRefusal) return undefined;
    throw problem;
  }
}

/** The formulas of a sheet that fill more cells than their own. */
type Spills = readonly Area[];

/** Beyond so many, charts draw the cells that their file names, and no more. */
const MOST_SPILLS = 10_000;

function spillsOf(sheet: Sheet): Spills {
  const spills = [...cellsOf(sheet)].flatMap(([row, column, { spill }]) =>
    spill ? [{ row, column, ...spill }] : [],
  );
  return spills.length > MOST_SPILLS ? [] : spills;
}

/**
 * Cells that one formula fills are drawn as far as it reaches: a file names those that it filled when the
 * file was written. Below them it may come to fill the blank cells that look like its last one.
 */
export class SpilledCells {
  readonly #spills = new Map<Sheet, Spills>();

  constructor(private readonly book: Book) {}

  withSpill(cells: CellsOf): CellsOf {
    const sheet = this.book.sheets.find(({ name }) => name === cells.sheet);
    const { row, column, rows, columns } = cells.area;
    if (!sheet || columns !== 1) return cells;
    const spills = this.#spills.get(sheet) ?? spillsOf(sheet);
    this.#spills.set(sheet, spills);
    const spill = spills.find(
      (one) =>
        one.row <= row &&
        one.row + one.rows === row + rows &&
        one.column <= column &&
        column < one.column + one.columns,
    );
    if (!spill) return cells;
    const style = cellAt(sheet, row + rows - 1, column)?.style;
    let room = rows;
    while (room < MOST_CELLS && isRoom(cellAt(sheet, row + room, column), style)) room++;
    const spillAt = { row: spill.row, column: spill.column };
    return { ...cells, area: { row, column, rows: room, columns }, spillAt };
  }
}

const isRoom = (cell: Cell | undefined, style: string | undefined) =>
  cell !== undefined &&
  style !== undefined &&
  cell.style === style &&
  cell.value === null &&
  cell.formula === undefined;
