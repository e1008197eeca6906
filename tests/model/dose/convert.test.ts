import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convertDose, DOSE_UNITS } from "../../../src/model/dose/convert";
import { expectRelative } from "../expectations";

describe("conversion of a dose", () => {
  it("takes 1 lb/short ton as 0.5 kg/t exactly", () => {
    expect(convertDose(1, "lb/short ton", "kg/t", 0.1)).toBe(0.5);
    // From the definitions: a pound is 0.45359237 kg, a short ton 2000 of them.
    expectRelative((0.45359237 / (2000 * 0.45359237)) * 1000, 0.5, 1e-15);
  });

  it.each([
    [8, "kg/t", "kg/t air-dry", 7.2],
    [7.2, "kg/t air-dry", "kg/t", 8],
    [8, "kg/t", "lb/short ton", 16],
    [8, "kg/t", "fraction", 0.008],
    [0.008, "fraction", "kg/t", 8],
    [250, "g/t", "kg/t", 0.25],
    [0.25, "kg/t", "g/t", 250],
    [16, "lb/short ton", "kg/t air-dry", 7.2],
  ] as const)("of %d %s to %s is %d", (value, from, to, expected) => {
    expectRelative(convertDose(value, from, to, 0.1), expected, 1e-12);
  });

  it("goes there and back, between every pair of units", () => {
    const unit = fc.constantFrom(...DOSE_UNITS);
    const moisture = fc.double({ min: 0, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        unit,
        unit,
        moisture,
        (value, from, to, w) => {
          expectRelative(convertDose(convertDose(value, from, to, w), to, from, w), value, 1e-12);
        },
      ),
    );
  });
});
