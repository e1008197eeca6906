import type { Random } from "./random";

/**
 * `count` numbers in (0, 1), one from each of as many equal slices, in random order: a column so made
 * follows its distribution closely, and several of them pair at random.
 *
 * Source: M. D. McKay, R. J. Beckman, W. J. Conover, A comparison of three methods for selecting values of
 * input variables, Technometrics 21 (1979) 239–245 (Latin hypercube).
 */
export function stratified(count: number, random: Random): Float64Array {
  const values = Float64Array.from(
    { length: count },
    (_, slice) => (slice + random.uniform()) / count,
  );
  random.shuffle(values);
  return values;
}
