import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { root } from "../../../src/model/numerics/root";
import { expectRelative } from "../expectations";

describe("the bracketed root", () => {
  const cases: [string, (x: number) => number, number, number, number][] = [
    ["a cubic", (x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
    ["a cosine against a line", (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ["a flat ninth power", (x) => (x - 0.3) ** 9, 0, 1, 0.3],
    ["a steep exponential", (x) => Math.exp(50 * x) - 2, -3, 4, Math.LN2 / 50],
    ["a root near the smallest numbers", (x) => x - 1e-300, -1, 1, 1e-300],
    ["a jump", (x) => (x < Math.PI ? -1 : 1), 0, 10, Math.PI],
  ];

  it.each(cases)("finds %s from either side", (_, f, low, high, expected) => {
    expectRelative(root(f, low, high), expected, 1e-15);
    expectRelative(root(f, high, low), expected, 1e-15);
  });

  it("finds a root at 0 and one at either end", () => {
    expect(root((x) => x ** 3, -1, 2)).toBeCloseTo(0, 100);
    expect(root((x) => x - 1, 1, 4)).toBe(1);
    expect(root((x) => x - 4, 1, 4)).toBe(4);
  });

  it("needs few evaluations where the function is smooth", () => {
    let evaluations = 0;
    root(
      (x) => {
        evaluations++;
        return Math.exp(-x) - x / 10;
      },
      0,
      10,
    );
    expect(evaluations).toBeLessThan(16);
  });

  it("refuses a bracket without a change of sign", () => {
    expect(() => root((x) => x * x + 1, -1, 1)).toThrow(RangeError);
  });

  it("never leaves the bracket", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.integer({ min: 1, max: 9 }),
        (at, power) => {
          const found = root(
            (x) => {
              expect(x >= 0 && x <= 1).toBe(true);
              return Math.sign(x - at) * Math.abs(x - at) ** power;
            },
            0,
            1,
          );
          expectRelative(found, at, 1e-14);
        },
      ),
    );
  });
});
