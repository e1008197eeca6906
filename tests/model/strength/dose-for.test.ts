import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Refusal } from "../../../src/model/refusal";
import { doseFor } from "../../../src/model/strength/dose-for";
import { response, shapes } from "../../../src/model/strength/response";
import { expectRelative } from "../expectations";

describe("the dose for a target", () => {
  it("inverts the response on its rising side, for rising and falling strengths", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.95, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.constantFrom(...shapes),
        fc.boolean(),
        (part, size, scale, shape, falls) => {
          const gain = falls ? -size : size;
          const dose = part * (shape === "straight" ? 10 : scale);
          const target = response(dose, 0, gain, scale, shape);
          expectRelative(doseFor(target, 0, gain, scale, shape), dose, 1e-12);
        },
      ),
    );
  });

  it("is the value by hand", () => {
    expectRelative(doseFor(45, 40, 10, 6, "exponential"), 6 * Math.LN2, 1e-15);
    expectRelative(doseFor(45, 40, 10, 6, "hyperbolic"), 6, 1e-15);
    expectRelative(doseFor(45, 40, 2, 1, "straight"), 2.5, 1e-15);
    // −6·W₀(−1/(2e)); W₀(−0.18393972058572117) = −0.2319609529865344, mpmath lambertw.
    expectRelative(doseFor(45, 40, 10, 6, "peaked"), 6 * 0.2319609529865344, 1e-14);
  });

  it("is 0 at the base, and the scale at the top of a peak", () => {
    expect(shapes.map((shape) => doseFor(40, 40, 10, 6, shape))).toEqual([0, 0, 0, 0]);
    expect(doseFor(50, 40, 10, 6, "peaked")).toBe(6);
    expect(doseFor(0.1 + 0.2, 0.1, 0.2, 6, "peaked")).toBe(6);
  });

  it("gives the lower of the two doses of a peaked response", () => {
    const dose = doseFor(response(9, 40, 10, 6, "peaked"), 40, 10, 6, "peaked");
    expect(dose).toBeLessThan(6);
    expectRelative(response(dose, 40, 10, 6, "peaked"), response(9, 40, 10, 6, "peaked"), 1e-14);
  });

  it.each([
    [50, "exponential", "A gain of 10 is not below the plateau of 10. Lower the target"],
    [52.1, "exponential", "A gain of 12.1 is not below the plateau of 10. Lower the target"],
    [52, "hyperbolic", "A gain of 12 is not below the plateau of 10. Lower the target"],
    [51, "peaked", "A gain of 11 is above the peak of 10. Lower the target"],
    [39, "straight", "The target is 39, and the response leads from its base of 40 the other way."],
  ] as const)("refuses a target of %f on a %s response and says why", (target, shape, message) => {
    expect(() => doseFor(target, 40, 10, 6, shape)).toThrow(message);
  });

  it("refuses a dose beyond the highest tried and says both", () => {
    expect(() => doseFor(49, 40, 10, 6, "exponential", 12)).toThrow(
      "The dose for a target of 49 is 13.8155, beyond the highest dose tried of 12.",
    );
    expect(doseFor(48, 40, 10, 6, "exponential", 12)).toBeLessThan(12);
  });

  it("refuses a flat response", () => {
    expect(() => doseFor(45, 40, 0, 6, "straight")).toThrow(Refusal);
    expect(() => doseFor(45, 40, 0, 6, "exponential")).toThrow(Refusal);
    expect(() => doseFor(45, 40, 1e-320, 6, "straight")).toThrow("beyond every number");
  });
});
