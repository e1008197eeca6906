import { figure } from "../figure";
import { noAnswer } from "../refusal";

/** What a sample of results says about the result. */
export interface Summary {
  readonly mean: number;
  readonly standardUncertainty: number;
  readonly median: number;
  readonly lower: number;
  readonly upper: number;
  readonly shortestLower: number;
  readonly shortestUpper: number;
}

/** What a quotient of 0.5 may miss a whole number by. */
const ROUNDING = 1e-9;

/**
 * Mean, standard uncertainty, median and two coverage intervals of a Monte Carlo sample of M values: one
 * with equal chances on both sides, and the shortest. Both run from the r-th to the (r + q)-th value in
 * order, with q the whole number nearest to coverage·M.
 *
 * Source: JCGM 101:2008, Supplement 1 to the Guide to the expression of uncertainty in measurement, 7.6
 * and 7.7.
 */
export function summarise(values: ArrayLike<number>, coverage: number): Summary {
  const sorted = Float64Array.from(values).sort();
  const count = sorted.length;
  const { inside, start } = coverageRanks(count, coverage);
  const at = (rank: number) => sorted[rank] as number;
  const mean = sorted.reduce((sum, value) => sum + value, 0) / count;
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  let shortest = start;
  for (let rank = 0; rank + inside < count; rank++) {
    if (at(rank + inside) - at(rank) < at(shortest + inside) - at(shortest)) shortest = rank;
  }
  return {
    mean,
    standardUncertainty: Math.sqrt(squares / (count - 1)),
    median: (at((count - 1) >> 1) + at(count >> 1)) / 2,
    lower: at(start),
    upper: at(start + inside),
    shortestLower: at(shortest),
    shortestUpper: at(shortest + inside),
  };
}

/**
 * Where the interval with equal chances outside lies among values in order: from the one at `start`, of
 * which the first is at 0, `inside` places on.
 */
export function coverageRanks(count: number, coverage: number): { inside: number; start: number } {
  const inside = Math.floor(coverage * count + 0.5);
  if (inside < 1 || inside >= count) {
    const least = Math.max(
      Math.ceil(0.5 / coverage - ROUNDING),
      Math.floor(0.5 / (1 - coverage) + ROUNDING) + 1,
    );
    noAnswer(
      `The number of values is ${count}, too small for an interval that holds ${figure(coverage)} of them. Give at least ${least}.`,
    );
  }
  return { inside, start: Math.floor((count - inside + 1) / 2) - 1 };
}
