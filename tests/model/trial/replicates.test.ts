import { describe, expect, it } from "vitest";
import { batchesPerLevel, powerOfBatches } from "../../../src/model/trial/replicates";
import comparisons from "../../references/comparisons.json";
import statistics from "../../references/trial-statistics.json";
import { expectRefusal, expectRelative } from "../expectations";

const published = statistics.power;
const pair = { alpha: 0.05, treatments: 1 };

describe("power", () => {
  // R's power.t.test, two-sided: the chance in the true direction, as it reports by default.
  it.each([
    ["twenty a level, one deviation", 20, 1, published.n20_delta1_sd1_alpha05_two_sided, 1e-7],
    ["the fractional number for 0.9", published["n_for_power_0.90_delta1"], 1, 0.9, 1e-6],
    ["the fractional number for 0.8", published["n_for_power_0.80_delta1"], 1, 0.8, 1e-6],
    ["4 % variation, 5 % difference, 0.8", published.n_cv4pct_diff5pct_power80, 1.25, 0.8, 2e-5],
    ["4 % variation, 5 % difference, 0.9", published.n_cv4pct_diff5pct_power90, 1.25, 0.9, 2e-5],
    ["five a level, 4 % and 5 %", 5, 1.25, published.power_n5_cv4pct_diff5pct, 5e-5],
  ])("of R: %s", (_, batches, deviations, expected, tolerance) => {
    const power = powerOfBatches(batches, { deviations, ...pair });
    expect(Math.abs(power - expected)).toBeLessThan(tolerance);
  });

  it("of five treatments agrees with an independent computation", () => {
    const { batches, power } = comparisons.power;
    batches.forEach((n, i) => {
      const computed = powerOfBatches(n, { deviations: 1.25, alpha: 0.05, treatments: 5 });
      expectRelative(computed, power[i] as number, 1e-9);
    });
  });

  it("falls as more treatments share the control at one risk of a false alarm", () => {
    const power = (treatments: number) =>
      powerOfBatches(8, { deviations: 1.5, alpha: 0.05, treatments });
    expect(power(2)).toBeLessThan(power(1));
    expect(power(5)).toBeLessThan(power(2));
  });
});

describe("batches per level", () => {
  it.each([
    [0.05, 0.05, 0.9, 23],
    [0.05, 0.05, 0.8, 17],
    [0.04, 0.05, 0.8, 12],
    [0.04, 0.05, 0.9, 15],
    [0.01, 0.5, 0.8, 2],
  ])(
    "for a variation of %f, a difference of %f and power %f are %i",
    (cv, difference, power, n) => {
      expect(batchesPerLevel(cv, difference, power, 0.05, 1)).toBe(n);
    },
  );

  it.each([
    [0.04, 0.05, 0.8, 0.05, 5],
    [0.04, 0.02, 0.9, 0.01, 3],
    [0.1, 0.03, 0.95, 0.05, 12],
    [0.002, 0.05, 0.99, 0.05, 2],
  ])(
    "are the first number that is enough: %f, %f, %f, %f, %i",
    (cv, difference, power, alpha, treatments) => {
      const plan = { deviations: difference / cv, alpha, treatments };
      const batches = batchesPerLevel(cv, difference, power, alpha, treatments);
      expect(powerOfBatches(batches, plan)).toBeGreaterThanOrEqual(power);
      if (batches > 2) expect(powerOfBatches(batches - 1, plan)).toBeLessThan(power);
    },
  );

  it("refuses a difference that no trial would find", () => {
    expectRefusal("no answer", "takes more than 100000 batches a level", () =>
      batchesPerLevel(0.1, 0.0001, 0.8, 0.05, 1),
    );
  });
});
