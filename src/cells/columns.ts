import { impossible } from "../model/refusal";
import type { Argument } from "./argument";
import { type Cells, isOmitted, usedRows } from "./cell";
import { columnsOf } from "./extent";
import { type Limits, quantity } from "./quantity";
import { line, readVector } from "./vector";

type Columns = readonly (readonly number[])[];

/** A block of numbers, column by column, all equally long. A single row is one vector, as everywhere. */
export function columns(name: string, unit: string, limits: Limits): Argument<Columns> {
  return {
    name,
    read(cells) {
      if (isOmitted(cells)) {
        impossible(`${name} is missing. Give ${quantity(name, unit, limits).allowed}.`);
      }
      return readColumns(name, unit, limits, cells as Cells);
    },
  };
}

/** The same, where it may be left out: no column then. */
export function optionalColumns(name: string, unit: string, limits: Limits): Argument<Columns> {
  return {
    name,
    read: (cells) => (isOmitted(cells) ? [] : readColumns(name, unit, limits, cells as Cells)),
  };
}

function readColumns(name: string, unit: string, limits: Limits, cells: Cells): Columns {
  const block = cells.slice(0, usedRows(cells));
  const element = quantity(name, unit, limits);
  if (block.length === 0) impossible(`${name} is blank. Give ${element.allowed}.`);
  if (block.length === 1) return [readVector({ name, element }, line(name, block))];
  return Array.from({ length: columnsOf(block) }, (_, column) => {
    const place = `${name}, column ${column + 1}`;
    return readVector(
      { name: place, element: quantity(place, unit, limits) },
      block.map((row) => row[column]),
    );
  });
}
