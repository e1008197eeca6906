import { describe, expect, it } from "vitest";
import { normalCdf } from "../../../src/model/numerics/normal";
import { type SampleShape, sample } from "../../../src/model/uncertainty/sample";
import { expectRefusal } from "../expectations";

const mean = (values: Float64Array) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const triangleCdf = (low: number, likely: number, high: number) => (x: number) =>
  x < likely
    ? (x - low) ** 2 / (high - low) / (likely - low)
    : 1 - (high - x) ** 2 / (high - low) / (high - likely);

describe("a sample", () => {
  const deviation = 2 / 1.9599639845400543;
  it.each<[SampleShape, number, number, number, (x: number) => number]>([
    ["triangular", 1, 1.5, 3, triangleCdf(1, 1.5, 3)],
    ["triangular", 0, 0, 2, triangleCdf(0, 0, 2)],
    ["triangular", -2, 5, 5.001, triangleCdf(-2, 5, 5.001)],
    ["uniform", 2, 2.1, 6, (x) => (x - 2) / 4],
    ["normal", 8, 10, 12, (x) => normalCdf((x - 10) / deviation)],
  ])(
    "of the %s from %f by %f to %f has one value in each slice",
    (shape, low, likely, high, cdf) => {
      const count = 500;
      const values = sample(low, likely, high, count, 3, shape, 1);
      const slices = [...values].map((value) => cdf(value) * count).sort((a, b) => a - b);
      slices.forEach((place, slice) => {
        expect(place).toBeGreaterThan(slice - 1e-6);
        expect(place).toBeLessThan(slice + 1 + 1e-6);
      });
    },
  );

  it("meets mean and variance of the triangle far closer than chance", () => {
    const values = sample(1, 1.5, 3, 10_000, 9, "triangular", 1);
    const centre = mean(values);
    const variance = mean(values.map((value) => (value - centre) ** 2));
    expect(Math.abs(centre - 5.5 / 3)).toBeLessThan(1e-5);
    // (a² + b² + c² − ab − ac − bc)/18 for low 1, likely 1.5, high 3.
    expect(Math.abs(variance - 3.25 / 18)).toBeLessThan(1e-4);
  });

  it("is the same for the same seed, and independent between streams", () => {
    const count = 4000;
    const one = sample(-1, 0, 1, count, 5, "uniform", 1);
    expect(sample(-1, 0, 1, count, 5, "uniform", 1)).toEqual(one);
    const correlation = (other: (i: number) => number) =>
      Math.abs(3 * mean(one.map((value, i) => value * other(i))));
    for (const [seed, stream] of [
      [5, 2],
      [6, 1],
    ] as const) {
      const column = sample(-1, 0, 1, count, seed, "uniform", stream);
      expect(correlation((i) => column[i] as number)).toBeLessThan(4 / Math.sqrt(count));
    }
    expect(correlation((i) => one[(i + 1) % count] as number)).toBeLessThan(4 / Math.sqrt(count));
  });

  it("repeats a value that is known", () => {
    for (const shape of ["triangular", "uniform", "normal"] as const) {
      expect([...sample(4, 4, 4, 3, 1, shape, 1)]).toEqual([4, 4, 4]);
    }
  });

  it.each([
    ["triangular", 2, 1, 3, "Low, likely and high are 2, 1 and 3"],
    ["uniform", 3, 3, 2, "Low, likely and high are 3, 3 and 2"],
    ["normal", 1, 1.5, 3, "Likely is 1.5, and a normal with 95 % from 1 to 3 has its middle at 2"],
  ] as const)("refuses a %s of %f, %f, %f", (shape, low, likely, high, words) => {
    expectRefusal("impossible input", words, () => sample(low, likely, high, 10, 1, shape, 1));
  });
});
