import { impossible } from "../model/refusal";
import { ErrorInInput } from "./answer";
import type { Argument } from "./argument";
import { type Cells, isError, isOmitted } from "./cell";
import { anyNumber, quantity, readNumber } from "./quantity";
import { line } from "./vector";

/** Results of a calculation, of which some may have failed. */
export interface Outcomes {
  readonly numbers: readonly number[];
  readonly errors: number;
}

/** A row or a column of results: an error in a cell is counted and does not spoil the rest, where there is one. */
export function outcomes(name: string, unit: string): Argument<Outcomes> {
  const element = quantity(name, unit, anyNumber);
  return {
    name,
    read(cells) {
      if (isOmitted(cells)) impossible(`${name} is missing. Give ${element.allowed}.`);
      const all = line(name, cells as Cells);
      const numbers: number[] = [];
      all.forEach((cell, i) => {
        if (!isError(cell)) numbers.push(readNumber(element, cell, ` (${i + 1} of ${all.length})`));
      });
      // Where nothing is left to be summarised, the error itself tells more than a count of it.
      if (numbers.length === 0 && all.length > 0) throw new ErrorInInput(all[0]);
      return { numbers, errors: all.length - numbers.length };
    },
  };
}
