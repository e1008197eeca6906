import { describe, expect, it } from "vitest";
import { requireEqualLengths, requireWholeFurnish, sumOf } from "../../src/model/vectors";
import { expectRefusal } from "./expectations";

describe("vectors", () => {
  it("names both of two unequal vectors", () => {
    expectRefusal("impossible input", "shares has 3 values and surfaces has 2.", () =>
      requireEqualLengths({ shares: [1, 2, 3], surfaces: [1, 2] }),
    );
  });

  it("accepts shares within 0.005 of 1 and says the sum of others", () => {
    requireWholeFurnish([0.5, 0.504]);
    expectRefusal("impossible input", "The shares sum to 0.95.", () =>
      requireWholeFurnish([0.6, 0.35]),
    );
    expectRefusal("impossible input", "The shares sum to NaN.", () => requireWholeFurnish([NaN]));
  });

  it("sums typed arrays as it sums arrays", () => {
    expect(sumOf(Float64Array.of(1, 2, 3.5))).toBe(6.5);
    expect(sumOf([])).toBe(0);
  });
});
