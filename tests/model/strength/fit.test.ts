import { describe, expect, it } from "vitest";
import { Refusal } from "../../../src/model/refusal";
import { fitResponse } from "../../../src/model/strength/fit";
import { estimates } from "../../../src/model/strength/limits";
import { independentPoints } from "../../../src/model/strength/points";
import type { Shape } from "../../../src/model/strength/response";
import certified from "../../references/nonlinear-regression.json";
import computed from "../../references/response-curves.json";
import { expectRelative } from "../expectations";

describe("the fit of published data", () => {
  it.each(certified.cases)("meets every published digit of $name", (set) => {
    const fit = fitResponse(independentPoints(set.doses, set.strengths), set.shape as Shape, 0);
    const { base, plateauGain, scale } = estimates(fit, 0.95);
    expect(base).toEqual({ estimate: 0, standardError: 0, lower: 0, upper: 0 });
    expectRelative(plateauGain.estimate, set.gain, 3e-11);
    expectRelative(plateauGain.standardError, set.gainError, 3e-11);
    expectRelative(fit.residualStandardDeviation, set.residualStandardDeviation, 1e-9);
    if (typeof set.perScale === "number" && typeof set.perScaleError === "number") {
      expectRelative(1 / scale.estimate, set.perScale, 3e-11);
      expectRelative(scale.standardError / scale.estimate ** 2, set.perScaleError, 3e-11);
    } else {
      expectRelative(scale.estimate, set.scale as number, 3e-11);
      expectRelative(scale.standardError, set.scaleError as number, 3e-11);
    }
  });

  it("gives 95 % limits by Student's t: BOD's gain of 19.14 ± 2.7764·2.4959 at 4 degrees of freedom", () => {
    const bod = certified.cases[3] as (typeof certified.cases)[number];
    const fit = fitResponse(independentPoints(bod.doses, bod.strengths), "exponential", 0);
    const { lower, upper } = estimates(fit, 0.95).plateauGain;
    expectRelative(upper - lower, 2 * 2.7764451051977987 * bod.gainError, 1e-11);
    expectRelative(upper + lower, 2 * bod.gain, 1e-11);
  });
});

describe("the fit with a free base, blocks and the other shapes", () => {
  it.each(computed.cases)("agrees with 40-digit arithmetic on $name", (set) => {
    const points = independentPoints(set.doses, set.strengths, undefined, set.blocks ?? undefined);
    const fit = fitResponse(points, set.shape as Shape, set.knownBase ?? undefined);
    const expected = set.optimum;
    // A nearly straight response has lost four digits to the likeness of gain and scale.
    const tolerance = set.name === "a nearly straight response" ? 1e-8 : 1e-11;
    expectRelative(fit.base, expected.base, tolerance);
    expectRelative(fit.plateauGain, expected.plateauGain, tolerance);
    expectRelative(fit.scale, expected.scale, tolerance);
    const errors = Object.values(estimates(fit, 0.95)).map(({ standardError }) => standardError);
    errors.forEach((error, i) => {
      expectRelative(error, expected.standardErrors[i] as number, tolerance);
    });
    for (let row = 0; row < 3; row++) {
      for (let column = 0; column < 3; column++) {
        const covariance = (fit.covarianceRoot[row] as readonly number[]).reduce(
          (sum, a, k) => sum + a * ((fit.covarianceRoot[column] as readonly number[])[k] as number),
          0,
        );
        expectRelative(
          covariance,
          (expected.covariance[row] as number[])[column] as number,
          tolerance * 10,
        );
      }
    }
    expectRelative(fit.residualStandardDeviation, expected.residualStandardDeviation, tolerance);
    expectRelative(fit.rSquared as number, expected.rSquared, 1e-12);
    for (const name of ["correctedAkaike", "lackOfFit"] as const) {
      if (expected[name] === null) expect(fit[name]).toBeUndefined();
      else expectRelative(fit[name] as number, expected[name], 1e-9);
    }
  });

  it("is the regression line when straight (by hand: slope 2, base 40.25, s² 0.125, n 4)", () => {
    const fit = fitResponse(independentPoints([0, 1, 2, 3], [40, 42.5, 44.5, 46]), "straight");
    expectRelative(fit.plateauGain, 2, 1e-14);
    expectRelative(fit.base, 40.25, 1e-14);
    expect(fit.scale).toBe(1);
    const { base, plateauGain, scale } = estimates(fit, 0.95);
    expectRelative(fit.residualSumOfSquares, 0.25, 1e-13);
    expectRelative(plateauGain.standardError, Math.sqrt(0.125 / 5), 1e-13);
    expectRelative(base.standardError, Math.sqrt(0.125 * (1 / 4 + 1.5 ** 2 / 5)), 1e-13);
    expect(scale).toEqual({ estimate: 1, standardError: 0, lower: 1, upper: 1 });
    expect(fit.correctedAkaike).toBeUndefined();
  });

  it("holds the scale of a line, and keeps its errors, where it does not rise at all", () => {
    const fit = fitResponse(independentPoints([0, 1, 2, 3], [41, 40, 40, 41]), "straight");
    const { plateauGain, scale } = estimates(fit, 0.95);
    // By hand: residuals ±0.5, so that s² is 1/2, and the error of the slope √(s²/5).
    expect(fit.plateauGain).toBe(0);
    expectRelative(plateauGain.standardError, Math.sqrt(0.1), 1e-14);
    expect(scale).toEqual({ estimate: 1, standardError: 0, lower: 1, upper: 1 });
  });

  it("takes the effect of blocks out: an offset of a block moves its base alone", () => {
    const set = computed.cases.find(({ name }) =>
      name.includes("incomplete"),
    ) as (typeof computed.cases)[number];
    const blocks = set.blocks as string[];
    const shifted = set.strengths.map((strength, i) => strength + (blocks[i] === "b" ? 30 : 0));
    const one = fitResponse(
      independentPoints(set.doses, set.strengths, undefined, blocks),
      "exponential",
    );
    const other = fitResponse(
      independentPoints(set.doses, shifted, undefined, blocks),
      "exponential",
    );
    expectRelative(other.plateauGain, one.plateauGain, 1e-11);
    expectRelative(other.scale, one.scale, 1e-11);
    expectRelative(other.base, one.base + 10, 1e-11);
    expectRelative(other.residualStandardDeviation, one.residualStandardDeviation, 1e-11);
    expectRelative(other.lackOfFit as number, one.lackOfFit as number, 1e-9);
  });
});

describe("what is counted as a point", () => {
  const doses = [0, 0, 0, 3, 3, 6, 6, 12, 12, 20, 20];
  const strengths = [40.2, 40.4, 39.7, 44.9, 45.1, 47.3, 47.1, 49.8, 50.4, 51.2, 51.4];
  const batches = [1, 1, 2, 1, 1, 1, 1, 1, 1, 1, 1];

  it("is the batch: its sheets are averaged, and a label used at another dose is another batch", () => {
    const points = independentPoints(doses, strengths, batches);
    expect([...points.doses]).toEqual([0, 0, 3, 6, 12, 20]);
    const expected = [40.3, 39.7, 45, 47.2, 50.1, 51.3];
    points.strengths.forEach((strength, i) => {
      expectRelative(strength, expected[i] as number, 1e-15);
    });
    expect(fitResponse(points, "exponential").points).toBe(6);
  });

  it("is the batch in its block where blocks are given", () => {
    const points = independentPoints(
      [0, 0, 0, 0],
      [1, 3, 5, 7],
      ["a", "a", "a", "a"],
      [1, 1, 2, 2],
    );
    expect([...points.strengths]).toEqual([2, 6]);
    expect(points.blocks.count).toBe(2);
  });

  it("wants a strength for every dose", () => {
    expect(() => independentPoints([1, 2, 3], [1, 2])).toThrow(
      "doses has 3 values and strengths has 2.",
    );
  });
});

describe("a fit that has no answer says why", () => {
  it.each([5e-324, 1e-300, 1e-9])("with a dose of %s among whole ones", (stray) => {
    const points = independentPoints(
      [0, 2, 4, 6, 8, stray, 16],
      [40.3, 44.1, 46.2, 47.9, 48.4, 49.6, 49.8],
    );
    expect(() => fitResponse(points, "exponential")).toThrow(/give all doses in one unit/);
  });

  const cases: [string, number[], number[], Shape, number | undefined, string][] = [
    [
      "as many points as parameters",
      [0, 2, 6],
      [40, 44, 48],
      "exponential",
      undefined,
      "The number of points is 3. A fit of 3 parameters needs at least 4",
    ],
    [
      "two different doses",
      [0, 0, 5, 5, 5],
      [40, 41, 44, 45, 44],
      "hyperbolic",
      undefined,
      "The number of different doses is 2. The shape hyperbolic needs at least 3.",
    ],
    [
      "one dose above a known base",
      [0, 5, 5, 5],
      [40, 44, 45, 44],
      "hyperbolic",
      40,
      "The number of different doses above 0 is 1. The shape hyperbolic needs at least 2.",
    ],
    [
      "one dose for a line",
      [5, 5, 5],
      [40, 41, 44],
      "straight",
      undefined,
      "The number of different doses is 1. The shape straight needs at least 2.",
    ],
    [
      "a flat response",
      [0, 2, 4, 6, 8],
      [40.1, 40.1, 40.1, 40.1, 40.1],
      "exponential",
      undefined,
      "The strengths do not change with the dose",
    ],
    [
      "an exact line",
      [0, 2, 4, 6, 8],
      [40, 42, 44, 46, 48],
      "exponential",
      undefined,
      "The strengths follow a straight line",
    ],
    [
      "a line bent upwards",
      [0, 2, 4, 6, 8],
      [40, 41, 43, 46, 50],
      "hyperbolic",
      undefined,
      "The strengths follow a straight line, or one that bends the other way",
    ],
    [
      "a step",
      [0, 2, 4, 6, 8],
      [40, 50, 50, 50, 50],
      "exponential",
      undefined,
      "The strengths change at the lowest doses only: gain and scale cannot be told apart. Add doses below 2",
    ],
    ["a step", [0, 2, 4, 6, 8], [40, 50, 50, 50, 50], "hyperbolic", 40, "Add doses below 2"],
    [
      "doses that barely differ",
      [0, 5, 5.000000001, 5.000000002, 5],
      [40, 44, 45, 44, 46],
      "exponential",
      undefined,
      "spread them wider",
    ],
    [
      "numbers beyond all measure",
      [0, 2, 4, 6, 8],
      [1e200, 3e200, 4e200, 4.5e200, 4.7e200],
      "exponential",
      undefined,
      "too large or too small",
    ],
  ];

  it.each(cases)("%s", (_, doses, strengths, shape, knownBase, message) => {
    const fit = () => fitResponse(independentPoints(doses, strengths), shape, knownBase);
    expect(fit).toThrow(Refusal);
    expect(fit).toThrow(message);
  });

  it("strengths that scatter at each dose about the same mean", () => {
    const points = independentPoints(
      [0, 2, 6, 12, 0, 2, 6, 12],
      [39, 40.5, 41, 39, 41, 39.5, 39, 41],
    );
    expect(() => fitResponse(points, "exponential")).toThrow(
      "The strengths do not change with the dose",
    );
  });

  it("blocks that each hold one dose", () => {
    const points = independentPoints(
      [0, 0, 3, 3, 6, 6],
      [40, 41, 44, 45, 47, 46],
      undefined,
      [1, 1, 2, 2, 3, 3],
    );
    expect(() => fitResponse(points, "exponential")).toThrow(
      "The number of different doses within the same blocks is 1. The shape exponential needs at least 3.",
    );
    expect(() => fitResponse(points, "straight")).toThrow("The shape straight needs at least 2");
  });
});

describe("blocks beside a known base", () => {
  it("are refused, since a block has a base of its own", () => {
    const points = independentPoints(
      [0, 2, 6, 0, 2, 6],
      [40, 43, 46, 41, 44, 47],
      undefined,
      [1, 1, 1, 2, 2, 2],
    );
    expect(() => fitResponse(points, "exponential", 40)).toThrow(
      "The known base is 40, and blocks are given.",
    );
  });
});
