import { impossible } from "../model/refusal";
import type { Argument } from "./argument";
import { type Cells, isOmitted, usedRows } from "./cell";
import { columnsOf } from "./extent";
import { type Limits, quantity } from "./quantity";
import { line, readVector } from "./vector";

/** A block of numbers, column by column, all equally long. A single row is one vector, as everywhere. */
export function columns(
  name: string,
  unit: string,
  limits: Limits,
): Argument<readonly (readonly number[])[]> {
  return {
    name,
    read(cells) {
      const { allowed } = quantity(name, unit, limits);
      if (isOmitted(cells)) impossible(`${name} is missing. Give ${allowed}.`);
      const block = (cells as Cells).slice(0, usedRows(cells as Cells));
      if (block.length === 0) impossible(`${name} is blank. Give ${allowed}.`);
      if (block.length === 1) {
        return [readVector({ name, element: quantity(name, unit, limits) }, line(name, block))];
      }
      return Array.from({ length: columnsOf(block) }, (_, column) => {
        const place = `${name}, column ${column + 1}`;
        return readVector(
          { name: place, element: quantity(place, unit, limits) },
          block.map((row) => row[column]),
        );
      });
    },
  };
}
