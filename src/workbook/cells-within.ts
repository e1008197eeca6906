import type { Area, Cell, Sheet } from "./book";

/** Every cell of a sheet that holds something, row by row. */
export function* cellsOf({ cells }: Pick<Sheet, "cells">): Generator<[number, number, Cell]> {
  for (const [row, line] of Object.entries(cells))
    for (const [column, cell] of Object.entries<Cell>(line))
      yield [Number(row), Number(column), cell];
}

/** So few places are looked up one by one; for more it pays to ask what there is. */
const few = 1000;

/** Keys from `start` on, so many as `count` says, in any order. */
function* keysWithin(held: object, start: number, count: number): Generator<number> {
  if (count <= few)
    for (let key = start; key < start + count; key++) {
      if (key in held) yield key;
    }
  else
    for (const key of Object.keys(held)) {
      const place = Number(key);
      if (place >= start && place < start + count) yield place;
    }
}

/** The cells of an area that hold something: as quick for a whole column as for what stands in it. */
export function* cellsWithin(sheet: Sheet, area: Area): Generator<[number, number, Cell]> {
  for (const row of keysWithin(sheet.cells, area.row, area.rows)) {
    const line = sheet.cells[row] as Readonly<Record<number, Cell>>;
    for (const column of keysWithin(line, area.column, area.columns))
      yield [row, column, line[column] as Cell];
  }
}
