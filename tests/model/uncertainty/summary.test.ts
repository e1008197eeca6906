import { describe, expect, it } from "vitest";
import { sample } from "../../../src/model/uncertainty/sample";
import { summarise } from "../../../src/model/uncertainty/summary";
import { expectRefusal, expectRelative } from "../expectations";

/** The additive example of JCGM 101:2008: the sum of four independent inputs. */
function sumOfFour(shape: "normal" | "uniform", halfWidth: number): Float64Array {
  const inputs = [1, 2, 3, 4].map((stream) =>
    sample(-halfWidth, 0, halfWidth, 10_000, 2008, shape, stream),
  );
  return Float64Array.from({ length: 10_000 }, (_, i) =>
    inputs.reduce((sum, input) => sum + (input[i] as number), 0),
  );
}

describe("the summary of a sample", () => {
  // The standard states u = 2.00 to two digits (from memory), so that a result may miss by half of 0.1
  // in u; its coverage limits then may miss by 0.1.
  it("meets the additive example with normal inputs: u = 2.00, 95 % within ±3.92", () => {
    const summary = summarise(sumOfFour("normal", 1.9599639845400543), 0.95);
    expect(Math.abs(summary.mean)).toBeLessThan(0.005);
    expect(Math.abs(summary.standardUncertainty - 2)).toBeLessThan(0.05);
    expect(Math.abs(summary.lower + 3.92)).toBeLessThan(0.1);
    expect(Math.abs(summary.upper - 3.92)).toBeLessThan(0.1);
    expect(summary.shortestUpper - summary.shortestLower).toBeLessThanOrEqual(
      summary.upper - summary.lower,
    );
  });

  it("meets the additive example with rectangular inputs of unit deviation: ±3.88", () => {
    // Convolution (Irwin–Hall): the sum of four U(0, 1) exceeds 4 − d with probability d⁴/24, d below 1.
    const exact = Math.sqrt(3) * 2 * (2 - (24 * 0.025) ** 0.25);
    expect(exact).toBeCloseTo(3.88, 2);
    const summary = summarise(sumOfFour("uniform", Math.sqrt(3)), 0.95);
    expect(Math.abs(summary.standardUncertainty - 2)).toBeLessThan(0.05);
    expect(Math.abs(summary.lower + exact)).toBeLessThan(0.1);
    expect(Math.abs(summary.upper - exact)).toBeLessThan(0.1);
  });

  it("takes the ranks of JCGM 101, 7.7: 95 % of a hundred values from the 3rd to the 98th", () => {
    const values = Array.from({ length: 100 }, (_, i) => ((i * 37) % 100) + 1);
    const summary = summarise(values, 0.95);
    expect(summary).toMatchObject({ lower: 3, upper: 98, median: 50.5, mean: 50.5 });
    expectRelative(summary.standardUncertainty, Math.sqrt((100 * 101) / 12), 1e-14);
  });

  it("finds the shortest interval of a skewed sample at its dense end", () => {
    const values = Float64Array.from({ length: 1000 }, (_, i) => -Math.log1p(-(i + 0.5) / 1000));
    const summary = summarise(values, 0.9);
    expect(summary.shortestLower).toBe(values[0]);
    expect(Math.abs(summary.shortestUpper - Math.log(10))).toBeLessThan(0.02);
    expect(Math.abs(summary.lower + Math.log(0.95))).toBeLessThan(0.002);
  });

  it("refuses fewer values than the interval needs", () => {
    const values = Array.from({ length: 11 }, (_, i) => i);
    expect(summarise(values, 0.95)).toMatchObject({ lower: 0, upper: 10 });
    expectRefusal(
      "no answer",
      "The number of values is 10, too small for an interval that holds 0.95",
      () => summarise(values.slice(1), 0.95),
    );
    expectRefusal("no answer", "Give at least 11.", () => summarise(values.slice(1), 0.95));
  });

  // By hand: coverage·count, rounded, is 1 or more and less than the count.
  it.each([
    [0.01, 50],
    [0.2, 3],
    [0.5, 2],
    [0.8, 3],
    [0.9, 6],
    [0.997, 167],
  ])(
    "takes no fewer values for an interval that holds %f than the %i that it names",
    (coverage, least) => {
      const values = Array.from({ length: least }, (_, i) => i);
      expect(() => summarise(values, coverage)).not.toThrow();
      expectRefusal("no answer", `Give at least ${least}.`, () =>
        summarise(values.slice(1), coverage),
      );
    },
  );
});
