import { figure } from "../figure";
import { normalQuantile } from "../numerics/normal";
import { Random } from "../numerics/random";
import { stratified } from "../numerics/stratified";
import { impossible } from "../refusal";

export const SAMPLE_SHAPES = ["triangular", "uniform", "normal"] as const;
export type SampleShape = (typeof SAMPLE_SHAPES)[number];

/** How far, as a share of high − low, the likely value of a normal may lie off the middle: its rounding. */
const ROUNDING_OF_LIKELY = 0.01;

/**
 * A stratified sample: one value from each of `count` equally likely slices, in random order, so that the
 * sample follows its distribution closely and columns of different streams pair at random.
 *
 * A uniform ignores its likely value. A normal has low to high for its central 95 % and its mean midway;
 * a likely value elsewhere contradicts that and is refused, since a skewed belief is what the triangle is
 * for.
 *
 * Source: M. D. McKay, R. J. Beckman, W. J. Conover, A comparison of three methods for selecting values of
 * input variables, Technometrics 21 (1979) 239–245 (Latin hypercube).
 */
export function sample(
  low: number,
  likely: number,
  high: number,
  count: number,
  seed: number,
  shape: SampleShape,
  stream: number,
): Float64Array {
  const quantile = quantileOf(shape, low, likely, high);
  return stratified(count, new Random(seed, stream)).map(quantile);
}

function quantileOf(
  shape: SampleShape,
  low: number,
  likely: number,
  high: number,
): (p: number) => number {
  if (!(low <= likely && likely <= high)) {
    impossible(
      `Low, likely and high are ${figure(low)}, ${figure(likely)} and ${figure(high)}. Give them in rising order.`,
    );
  }
  const width = high - low;
  const middle = low + width / 2;
  switch (shape) {
    case "triangular":
      return triangle(low, likely, high);
    case "uniform":
      return (p) => low + width * p;
    case "normal": {
      if (Math.abs(likely - middle) > ROUNDING_OF_LIKELY * width) {
        impossible(
          `Likely is ${figure(likely)}, and a normal with 95 % from ${figure(low)} to ${figure(high)} has its middle at ${figure(middle)}. Give that as likely, or choose triangular.`,
        );
      }
      const deviation = width / 2 / -normalQuantile(0.025);
      return (p) => middle + deviation * normalQuantile(p);
    }
  }
}

function triangle(low: number, likely: number, high: number): (p: number) => number {
  const width = high - low;
  const rising = width === 0 ? 0 : (likely - low) / width;
  return (p) =>
    p < rising
      ? low + Math.sqrt(p * width * (likely - low))
      : high - Math.sqrt((1 - p) * width * (high - likely));
}
