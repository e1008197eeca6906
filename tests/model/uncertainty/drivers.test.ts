import { describe, expect, it } from "vitest";
import { drivers } from "../../../src/model/uncertainty/drivers";
import { sample } from "../../../src/model/uncertainty/sample";
import { expectRefusal, expectRelative } from "../expectations";

describe("the drivers of a result", () => {
  it("has Spearman's coefficient of ten pairs without ties, ρ = 1 − 6·Σd²/(n³ − n) = −29/165", () => {
    const results = [106, 86, 100, 101, 99, 103, 97, 113, 112, 110];
    const input = [7, 0, 27, 50, 28, 29, 20, 12, 6, 17];
    expectRelative(drivers(results, [input])[0]?.rankCorrelation as number, -29 / 165, 1e-14);
  });

  it("gives equal values the middle of their ranks", () => {
    // Ranks 1, 2.5, 2.5, 4 against 1, 2, 3, 4: products of deviations 4.5, squares 4.5 and 5.
    const [driver] = drivers([1, 2, 2, 9], [[1, 2, 3, 4]]);
    expectRelative(driver?.rankCorrelation as number, 4.5 / Math.sqrt(5 * 4.5), 1e-14);
  });

  it("orders independent inputs by their share of the spread", () => {
    const inputs = [1, 2, 3].map((stream) => [...sample(-1, 0, 1, 5000, 12, "uniform", stream)]);
    const [a, b, c] = inputs as [number[], number[], number[]];
    const results = a.map((x, i) => x + 3 * (b[i] as number) - 2 * (c[i] as number));
    const found = drivers(results, inputs);
    expect(found.map(({ input }) => input)).toEqual(["input 2", "input 3", "input 1"]);
    expect(found[1]?.rankCorrelation).toBeLessThan(0);
    // Shares of the variance are 9/14, 4/14, 1/14; those of the ranks are near them, not equal.
    [9, 4, 1].forEach((part, i) => {
      expect(Math.abs((found[i]?.share as number) - part / 14)).toBeLessThan(0.04);
    });
  });

  it("sees a monotone relation whatever its shape", () => {
    const x = Array.from({ length: 20 }, (_, i) => i + 1);
    const results = x.map((value) => Math.exp(value));
    const found = drivers(results, [x, x.map((value) => -(value ** 3))]);
    [1, -1].forEach((correlation, i) => {
      expectRelative(found[i]?.rankCorrelation as number, correlation, 1e-14);
      expectRelative(found[i]?.share as number, 0.5, 1e-14);
    });
  });

  it("leaves unexplained what no input explains, and gives a constant input nothing", () => {
    const inputs = [
      [1, 1, 1, 1],
      [1, 2, 3, 4],
    ];
    const found = drivers([3, 1, 4, 2], inputs);
    expect(found.find(({ input }) => input === "input 1")).toMatchObject({
      rankCorrelation: 0,
      share: 0,
    });
    expect(found.reduce((sum, { share }) => sum + share, 0)).toBeLessThan(0.2);
  });

  it("refuses a result that never changes, and too few results", () => {
    expectRefusal("no answer", "Every result is 5", () => drivers([5, 5, 5], [[1, 2, 3]]));
    expectRefusal("impossible input", "The number of results is 2. Give at least 3.", () =>
      drivers([5, 6], [[1, 2]]),
    );
    expectRefusal("impossible input", "results has 3 values and each input has 2.", () =>
      drivers([5, 6, 7], [[1, 2]]),
    );
    expectRefusal("impossible input", "inputs has 1 column and names has 2 names.", () =>
      drivers([5, 6, 7], [[1, 2, 3]], ["dose", "solids"]),
    );
  });
});
