import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Refusal } from "../../../src/model/refusal";
import { fitResponse } from "../../../src/model/strength/fit";
import { independentPoints } from "../../../src/model/strength/points";
import { response, type Shape } from "../../../src/model/strength/response";
import computed from "../../references/response-curves.json";
import { expectRelative } from "../expectations";

const curved = ["exponential", "hyperbolic", "peaked"] as const;

/** Trials as they come: few points or many, with or without a blank, flat, steep, straight, noisy. */
const trials = fc
  .record({
    shape: fc.constantFrom(...curved),
    start: fc.constantFrom(0, 0.1, 3),
    steps: fc.array(fc.double({ min: 0.05, max: 6, noNaN: true }), { minLength: 3, maxLength: 12 }),
    gain: fc.constantFrom(0, 5, -5),
    logScale: fc.double({ min: -3, max: 7, noNaN: true }),
    noise: fc.constantFrom(0, 1e-3, 0.1, 1, 10),
    errors: fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 13, maxLength: 13 }),
    knownBase: fc.constantFrom(undefined, 40),
  })
  .map(({ shape, start, steps, gain, logScale, noise, errors, knownBase }) => {
    const doses: number[] = [start];
    for (const step of steps) doses.push((doses.at(-1) as number) + step);
    const strengths = doses.map(
      (dose, i) =>
        response(dose, 40, gain, Math.exp(logScale), shape) + (noise * (errors[i] as number)) / 100,
    );
    return { shape, doses, strengths, knownBase };
  });

function fitOrRefusal(doses: number[], strengths: number[], shape: Shape, knownBase?: number) {
  try {
    return fitResponse(independentPoints(doses, strengths), shape, knownBase);
  } catch (problem) {
    if (problem instanceof Refusal && problem.kind === "no answer") return problem;
    throw problem;
  }
}

/** Residual sum of squares at one scale by the normal equations, written out a second time. */
function leastSquaresAt(
  scale: number,
  doses: number[],
  strengths: number[],
  shape: Shape,
  knownBase?: number,
): number {
  const rises = doses.map((dose) => response(dose, 0, 1, scale, shape));
  const mean = (values: number[]) => values.reduce((a, b) => a + b) / values.length;
  const [y0, f0] = knownBase === undefined ? [mean(strengths), mean(rises)] : [knownBase, 0];
  const dot = (a: number[], b: number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
  const y = strengths.map((strength) => strength - y0);
  const f = rises.map((rise) => rise - f0);
  const gain = dot(f, y) / dot(f, f);
  const residuals = y.map((value, i) => value - gain * (f[i] as number));
  return dot(residuals, residuals);
}

describe("any trial", () => {
  it("converges to the least sum of squares over all scales, or is refused with a reason", () => {
    fc.assert(
      fc.property(trials, ({ shape, doses, strengths, knownBase }) => {
        const fit = fitOrRefusal(doses, strengths, shape, knownBase);
        if (fit instanceof Refusal) {
          expect(fit.message.length).toBeGreaterThan(40);
          return;
        }
        const numbers = [fit.base, fit.plateauGain, fit.scale, ...fit.covarianceRoot.flat()];
        expect(numbers.every(Number.isFinite)).toBe(true);
        const rounding = 1e-26 * strengths.reduce((sum, y) => sum + y * y, 0);
        const lowest = Math.min(...doses.filter((dose) => dose > 0)) / 10;
        const highest = Math.max(...doses) * 1000;
        for (let scale = lowest; scale < highest; scale *= 1.1) {
          const other = leastSquaresAt(scale, doses, strengths, shape, knownBase);
          expect(fit.residualSumOfSquares).toBeLessThanOrEqual(other * (1 + 1e-10) + rounding);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("gives the same curve, bit by bit, in units that differ by powers of two from 1e-6 to 1e6", () => {
    fc.assert(
      fc.property(
        trials,
        fc.integer({ min: -20, max: 20 }),
        fc.integer({ min: -20, max: 20 }),
        (trial, dosePower, strengthPower) => {
          const [perDose, perStrength] = [2 ** dosePower, 2 ** strengthPower];
          const { shape, doses, strengths, knownBase } = trial;
          const fit = fitOrRefusal(doses, strengths, shape, knownBase);
          const other = fitOrRefusal(
            doses.map((dose) => dose * perDose),
            strengths.map((strength) => strength * perStrength),
            shape,
            knownBase === undefined ? undefined : knownBase * perStrength,
          );
          if (fit instanceof Refusal || other instanceof Refusal) {
            expect(other instanceof Refusal && fit instanceof Refusal).toBe(true);
            return;
          }
          expect(other.scale).toBe(fit.scale * perDose);
          expect(other.plateauGain).toBe(fit.plateauGain * perStrength);
          expect(other.covarianceRoot[2][2]).toBe(fit.covarianceRoot[2][2] * perDose);
          expect(other.covarianceRoot[1][1]).toBe(fit.covarianceRoot[1][1] * perStrength);
        },
      ),
      { numRuns: 300 },
    );
  });

  it.each([1e-6, 1e-3, 1e3, 1e6])(
    "gives the same curve in doses and strengths scaled by %f",
    (unit) => {
      for (const set of computed.cases.slice(0, 6)) {
        const fit = fitResponse(
          independentPoints(
            set.doses.map((dose) => dose * unit),
            set.strengths.map((strength) => strength / unit),
          ),
          set.shape as Shape,
          set.knownBase ?? undefined,
        );
        expectRelative(fit.scale, set.optimum.scale * unit, 1e-10);
        expectRelative(fit.plateauGain, set.optimum.plateauGain / unit, 1e-10);
      }
    },
  );

  it("does not depend on the order of its points", () => {
    const set = computed.cases[2] as (typeof computed.cases)[number];
    const forward = fitResponse(independentPoints(set.doses, set.strengths), "hyperbolic");
    const backward = fitResponse(
      independentPoints([...set.doses].reverse(), [...set.strengths].reverse()),
      "hyperbolic",
    );
    expectRelative(backward.scale, forward.scale, 1e-12);
    expectRelative(backward.base, forward.base, 1e-12);
  });

  it("recovers an exact curve to its digits, with no error left", () => {
    for (const shape of curved) {
      const doses = [0, 1, 2, 4, 8, 16, 30];
      const fit = fitResponse(
        independentPoints(
          doses,
          doses.map((dose) => response(dose, 40, 12, 6, shape)),
        ),
        shape,
      );
      expectRelative(fit.plateauGain, 12, 1e-12);
      expectRelative(fit.scale, 6, 1e-12);
      expect(fit.residualStandardDeviation).toBeLessThan(1e-13);
      expectRelative(fit.rSquared as number, 1, 1e-15);
    }
  });
});
