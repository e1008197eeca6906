import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Refusal } from "../../../src/model/refusal";
import {
  gradient,
  increase,
  response,
  type Shape,
  shapes,
  slope,
} from "../../../src/model/strength/response";
import { expectRelative } from "../expectations";

const curves = fc.record({
  dose: fc.double({ min: 0.01, max: 30, noNaN: true }),
  gain: fc.double({ min: 0.5, max: 40, noNaN: true }),
  scale: fc.double({ min: 0.5, max: 20, noNaN: true }),
  shape: fc.constantFrom(...shapes),
});

describe("the response to a dose", () => {
  const byHand: [Shape, number, number][] = [
    ["exponential", 6, 40 + 10 * (1 - 1 / Math.E)],
    ["hyperbolic", 6, 45],
    ["peaked", 6, 50],
    ["straight", 6, 100],
    ["exponential", 12, 40 + 10 * (1 - Math.exp(-2))],
    ["hyperbolic", 12, 40 + 20 / 3],
    ["peaked", 12, 40 + 20 / Math.E],
  ];

  it.each(byHand)(
    "%s at %f, base 40, gain 10, scale 6, is the value by hand",
    (shape, dose, expected) => {
      expectRelative(response(dose, 40, 10, 6, shape), expected, 1e-15);
    },
  );

  it.each(shapes)("starts at the base when %s", (shape) => {
    expect(response(0, 40, 10, 6, shape)).toBe(40);
  });

  it("keeps the digits of a small increase", () => {
    expectRelative(increase(1e-12, 10, 6, "exponential"), 10 * (1e-12 / 6), 1e-12);
  });

  it("levels off where it saturates, and returns to the base beyond a peak", () => {
    expect(increase(1e300, 10, 6, "exponential")).toBe(10);
    expect(increase(1e300, 10, 6, "hyperbolic")).toBe(10);
    expect(increase(1e300, 10, 6, "peaked")).toBe(0);
  });

  it("refuses what a number cannot hold instead of giving none", () => {
    expect(() => increase(1e300, 10, 1e-300, "hyperbolic")).toThrow(Refusal);
    expect(() => slope(0, 10, 0, "hyperbolic")).toThrow(Refusal);
  });

  it("has the slope that differences show", () => {
    fc.assert(
      fc.property(curves, ({ dose, gain, scale, shape }) => {
        const h = 1e-5 * scale;
        const difference =
          (increase(dose + h, gain, scale, shape) - increase(dose - h, gain, scale, shape)) /
          (2 * h);
        expect(Math.abs(difference - slope(dose, gain, scale, shape))).toBeLessThan(
          (1e-8 * gain) / (shape === "straight" ? 1 : scale),
        );
      }),
    );
  });

  it("has the gradient that differences show", () => {
    fc.assert(
      fc.property(curves, ({ dose, gain, scale, shape }) => {
        const h = 1e-5;
        const at = (base: number, plateauGain: number, width: number) =>
          response(dose, base, plateauGain, width, shape);
        const differences = [
          (at(h, gain, scale) - at(-h, gain, scale)) / (2 * h),
          (at(0, gain + h, scale) - at(0, gain - h, scale)) / (2 * h),
          (at(0, gain, scale * (1 + h)) - at(0, gain, scale * (1 - h))) / (2 * h * scale),
        ];
        gradient(dose, gain, scale, shape).forEach((partial, i) => {
          expect(Math.abs(partial - (differences[i] as number))).toBeLessThan(1e-7 * gain);
        });
      }),
    );
  });

  it("does not depend on the unit of the dose", () => {
    fc.assert(
      fc.property(curves, ({ dose, gain, scale, shape }) => {
        const unit = shape === "straight" ? 1 : 2;
        expect(increase(dose * unit, gain, scale * unit, shape)).toBe(
          increase(dose, gain, scale, shape),
        );
      }),
    );
  });
});
