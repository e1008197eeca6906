import fc from "fast-check";
import { expect, test } from "vitest";
import { marginalCost } from "../../../src/model/cost/marginal";
import { increase, shapes } from "../../../src/model/strength/response";
import { expectRefusal } from "../expectations";

test.each([
  // By hand: gain·e^(−x/s)/s = 10·e^(−1)/5; 10·5/(5+5)²; 10/5·(1−0.5)·e^0.5; 10.
  ["exponential", 5, 0.6 / (2 * Math.exp(-1))],
  ["hyperbolic", 5, 0.6 / 0.5],
  ["peaked", 2.5, 0.6 / Math.exp(0.5)],
  ["straight", 5, 0.06],
] as const)("price over the slope of a response that is %s", (shape, dose, expected) => {
  expect(marginalCost(dose, 0.6, 10, 5, shape)).toBeCloseTo(expected, 13);
});

test("is the limit of added cost over added strength", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...shapes),
      fc.double({ min: 0, max: 4, noNaN: true }),
      fc.double({ min: 0.1, max: 100, noNaN: true }),
      (shape, dose, gain) => {
        const step = 1e-5;
        const before = increase(dose - step, gain, 5, shape);
        const after = increase(dose + step, gain, 5, shape);
        const cost = marginalCost(dose, 0.6, gain, 5, shape);
        expect(Math.abs(cost / ((2 * step * 0.6) / (after - before)) - 1)).toBeLessThan(1e-8);
      },
    ),
  );
});

test("on a saturating response the next unit costs more than the units so far", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("exponential", "hyperbolic", "peaked"),
      fc.double({ min: 0.1, max: 4.9, noNaN: true }),
      (shape, dose) => {
        const average = (dose * 0.6) / increase(dose, 10, 5, shape);
        expect(marginalCost(dose, 0.6, 10, 5, shape)).toBeGreaterThan(average);
      },
    ),
  );
});

test.each([
  ["at the peak", 5, "peaked"],
  ["past the peak", 6, "peaked"],
  ["far out on the plateau", 1e4, "exponential"],
] as const)("%s nothing more can be bought", (_, dose, shape) => {
  expectRefusal("no answer", "no longer rises", () => marginalCost(dose, 0.6, 10, 5, shape));
});
