import { describe, expect, it } from "vitest";
import { Random } from "../../../src/model/numerics/random";
import { bandOf } from "../../../src/model/strength/band";
import { fitResponse } from "../../../src/model/strength/fit";
import { estimates } from "../../../src/model/strength/limits";
import { independentPoints } from "../../../src/model/strength/points";
import { gradient, response, type Shape, shapes } from "../../../src/model/strength/response";
import computed from "../../references/response-curves.json";
import { expectRelative } from "../expectations";

describe("the band of the mean", () => {
  it.each(computed.cases)(
    "is gᵀ·Cov·g with the covariance of 40-digit arithmetic: $name",
    (set) => {
      const points = independentPoints(
        set.doses,
        set.strengths,
        undefined,
        set.blocks ?? undefined,
      );
      const fit = fitResponse(points, set.shape as Shape, set.knownBase ?? undefined);
      const { base, plateauGain, scale, covariance } = set.optimum;
      const at = bandOf(fit, 0.95);
      // The reference holds 17 digits; where the covariance is large most of them cancel.
      const tolerance = set.name === "a nearly straight response" ? 1e-3 : 1e-8;
      for (const dose of [0.3, 1, 4].map((share) => share * Math.max(...set.doses))) {
        const g = gradient(dose, plateauGain, scale, set.shape as Shape);
        if (set.knownBase !== null) g[0] = 0;
        const variance = g.reduce(
          (sum, a, i) =>
            sum + a * g.reduce((s, b, j) => s + b * ((covariance[i] as number[])[j] as number), 0),
          0,
        );
        expectRelative(
          at(dose).estimate,
          response(dose, base, plateauGain, scale, set.shape as Shape),
          1e-9,
        );
        expectRelative(at(dose).standardError, Math.sqrt(variance), tolerance);
      }
    },
  );

  it("is that of the base at dose 0, and widens with the confidence", () => {
    const fit = fitResponse(
      independentPoints([0, 2, 5, 9, 14], [40, 45, 48, 50.2, 50.6]),
      "exponential",
    );
    const { base } = estimates(fit, 0.95);
    const blank = bandOf(fit, 0.95)(0);
    expectRelative(blank.lower, base.lower, 1e-14);
    expectRelative(blank.upper, base.upper, 1e-14);
    const wide = bandOf(fit, 0.99)(5);
    const narrow = bandOf(fit, 0.9)(5);
    // t of 2 degrees of freedom: 9.92484320 at 99 %, 2.91998558 at 90 % (common tables).
    expectRelative(
      (wide.upper - wide.lower) / (narrow.upper - narrow.lower),
      9.9248432 / 2.91998558,
      1e-8,
    );
  });

  it("covers the true mean in 95 of 100 trials, blocks or none", () => {
    const random = new Random(20, 1);
    const doses = [0, 2, 4, 7, 11, 16];
    const blocks = doses.map(() => 1).concat(doses.map(() => 2));
    const both = [...doses, ...doses];
    let covered = 0;
    const trials = 1500;
    for (let trial = 0; trial < trials; trial++) {
      const strengths = both.map(
        (dose, i) =>
          response(dose, 40, 12, 5, "exponential") +
          3 * (blocks[i] as number) +
          0.4 * random.normal(),
      );
      const fit = fitResponse(independentPoints(both, strengths, undefined, blocks), "exponential");
      const { lower, upper } = bandOf(fit, 0.95)(7);
      const truth = response(7, 44.5, 12, 5, "exponential");
      if (lower <= truth && truth <= upper) covered++;
    }
    // Four standard errors of the count on either side.
    expect(Math.abs(covered / trials - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / trials));
  });

  it("has no width where the points lie on the curve", () => {
    for (const shape of shapes) {
      const doses = [0, 1, 3, 6, 10, 15];
      const fit = fitResponse(
        independentPoints(
          doses,
          doses.map((dose) => response(dose, 40, 8, shape === "straight" ? 1 : 5, shape)),
        ),
        shape,
      );
      const { lower, upper } = bandOf(fit, 0.95)(6);
      expect(upper - lower).toBeLessThan(1e-12);
    }
  });
});
