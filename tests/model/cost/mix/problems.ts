import fc from "fast-check";
import { cheapestMix } from "../../../../src/model/cost/mix/mix";
import { type Shape, scaleOf, shapes, unitCurves } from "../../../../src/model/strength/response";

export interface Problem {
  target: number;
  plateauGains: number[];
  scales: number[];
  prices: number[];
  maxima: number[];
  shapes: Shape[];
  sideUse: number[][];
  sideLimits: number[];
}

export const solved = (p: Problem) =>
  cheapestMix(
    p.target,
    p.plateauGains,
    p.scales,
    p.prices,
    p.maxima,
    p.shapes,
    p.sideUse,
    p.sideLimits,
  );

const spread = (low: number, high: number) =>
  fc
    .double({ min: Math.log(low), max: Math.log(high), noNaN: true })
    .map((logarithm) => Math.exp(logarithm));

/** Problems of up to `most` options whose target is within reach of three quarters of each, alone unlimited. */
export const problems = (most = 12): fc.Arbitrary<Problem> =>
  fc
    .array(
      fc.record({
        shape: fc.constantFrom(...shapes),
        plateauGain: spread(0.5, 30),
        scale: spread(0.5, 50),
        price: spread(0.05, 20),
        maximum: spread(0.2, 20),
        use: fc.array(fc.double({ min: -0.1, max: 1, noNaN: true }), {
          minLength: 2,
          maxLength: 2,
        }),
      }),
      { minLength: 1, maxLength: most },
    )
    .chain((options) =>
      fc.record({
        options: fc.constant(options),
        part: fc.double({ min: 0.01, max: 0.9, noNaN: true }),
        limits: fc.array(fc.double({ min: 0.5, max: 1.5, noNaN: true }), { maxLength: 2 }),
      }),
    )
    .map(({ options, part, limits }) => {
      const maxima = options.map((o) => (o.maximum * (o.shape === "straight" ? 1 : o.scale)) / 4);
      const sideUse = limits.map((_, j) =>
        options.map((o, i) => Math.max(0, o.use[j] as number) / (maxima[i] as number)),
      );
      // A mix that keeps the limits by construction: its gain is within reach.
      const inside = options.map((_, i) => part * 0.5 * (maxima[i] as number));
      const problem: Problem = {
        target: 1,
        plateauGains: options.map((o) => o.plateauGain),
        scales: options.map((o) => o.scale),
        prices: options.map((o) => o.price),
        maxima,
        shapes: options.map((o) => o.shape),
        sideUse,
        sideLimits: limits.map(
          (slack, j) =>
            0.05 +
            slack * sum((sideUse[j] as number[]).map((u, i) => u * (inside[i] as number) * 2)),
        ),
      };
      return { ...problem, target: 0.5 * sum(gains(problem, inside)) };
    });

export const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

export const gains = (p: Problem, amounts: readonly number[]) =>
  amounts.map((x, i) => gain(p, i, x));

function gain(p: Problem, i: number, amount: number): number {
  const shape = p.shapes[i] as Shape;
  const t = amount / scaleOf(p.scales[i] as number, shape);
  return (p.plateauGains[i] as number) * unitCurves[shape].rise(t);
}

/**
 * What no mix can cost less than, from any prices of the target and the limits (weak duality): each option
 * by itself at its best against them, found by halving on the slope, which falls.
 */
export function lowerBound(p: Problem, nextGain: number, worths: readonly number[]): number {
  let bound =
    nextGain * p.target - sum(worths.map((worth, j) => worth * (p.sideLimits[j] as number)));
  for (const [i, shape] of p.shapes.entries()) {
    const scale = scaleOf(p.scales[i] as number, shape);
    const net =
      (p.prices[i] as number) +
      sum(worths.map((worth, j) => worth * (p.sideUse[j]?.[i] as number)));
    const height = nextGain * (p.plateauGains[i] as number);
    let low = 0;
    let high = Math.min(
      p.maxima[i] as number,
      shape === "peaked" ? scale : Number.POSITIVE_INFINITY,
    );
    const end = high;
    for (let halvings = 0; halvings < 100; halvings++) {
      const middle = (low + high) / 2;
      if (net > (height / scale) * unitCurves[shape].slope(middle / scale)) high = middle;
      else low = middle;
    }
    bound += Math.min(...[0, low, end].map((x) => net * x - nextGain * gain(p, i, x)));
  }
  return bound;
}
