import fc from "fast-check";

export interface Furnish {
  shares: number[];
  surfaces: number[];
  capacities: number[];
  halfLoads: number[];
}

/** A number whose logarithm is spread evenly, so that every order of magnitude is tried. */
export const spread = (low: number, high: number) =>
  fc
    .double({ min: Math.log(low), max: Math.log(high), noNaN: true })
    .map((logarithm) => Math.exp(logarithm));

/** A furnish of up to `most` components; half loads run from 1e-9 to 1e9 mg/L unless told. */
export const furnishes = (most = 8, halfLoads: [number, number] = [1e-9, 1e9]) =>
  fc
    .array(
      fc.record({
        mass: fc.double({ min: 0.01, max: 1, noNaN: true }),
        surface: spread(0.1, 100),
        capacity: spread(0.01, 100),
        halfLoad: spread(...halfLoads),
      }),
      { minLength: 1, maxLength: most },
    )
    .map((components): Furnish => {
      const total = components.reduce((sum, { mass }) => sum + mass, 0);
      return {
        shares: components.map(({ mass }) => mass / total),
        surfaces: components.map(({ surface }) => surface),
        capacities: components.map(({ capacity }) => capacity),
        halfLoads: components.map(({ halfLoad }) => halfLoad),
      };
    });

export const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** The largest difference between two splits, relative to the whole of the second. */
export const apart = (split: readonly number[], other: readonly number[]) =>
  Math.max(...split.map((value, i) => Math.abs(value - (other[i] as number)))) / sum(other);
