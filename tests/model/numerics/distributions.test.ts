import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fisherTail } from "../../../src/model/numerics/fisher-f";
import { incompleteBeta } from "../../../src/model/numerics/incomplete-beta";
import { logGamma } from "../../../src/model/numerics/log-gamma";
import { normalCdf, normalDensity, normalQuantile } from "../../../src/model/numerics/normal";
import {
  studentCdf,
  studentDensity,
  studentQuantile,
  studentTail,
} from "../../../src/model/numerics/student-t";
import reference from "../../references/distributions.json";
import { expectRelative } from "../expectations";

describe("the normal distribution", () => {
  it.each(reference.normalCdf as number[][])("has its cdf at %f to the last digits", (x, p) => {
    expectRelative(normalCdf(x), p, 1e-15);
  });

  it.each(reference.normalQuantile as number[][])("has its quantile at %f", (p, x) => {
    expectRelative(normalQuantile(p), x, 1e-15);
    if (p > 1e-5) {
      expectRelative(normalQuantile(1 - p), -x, 1e-11);
    }
  });

  it("gives 0 and 1 beyond what a double can hold, and the mode 1/√(2π)", () => {
    expect(normalCdf(-1e6)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
    expectRelative(normalDensity(0), 1 / Math.sqrt(2 * Math.PI), 1e-16);
  });
});

describe("Student's t", () => {
  it.each(reference.studentTail as number[][])(
    "has the upper tail at t = %f, %f degrees",
    (t, degrees, p) => {
      expectRelative(studentTail(t, degrees), p, 1e-12);
      expectRelative(studentCdf(-t, degrees), p, 1e-12);
    },
  );

  it.each(reference.studentQuantile as number[][])(
    "has the quantile at p = %f, %f degrees",
    (p, degrees, t) => {
      expectRelative(studentQuantile(p, degrees), t, 1e-13);
    },
  );

  it("is the closed form at one and at two degrees of freedom", () => {
    for (const t of [0.3, 5, 1e4]) {
      expectRelative(studentTail(t, 1), Math.atan2(1, t) / Math.PI, 1e-14);
      expectRelative(studentDensity(t, 1), 1 / Math.PI / (1 + t * t), 1e-14);
      expectRelative(studentDensity(t, 2), (2 + t * t) ** -1.5, 1e-14);
    }
  });

  it("becomes the normal distribution with infinite degrees of freedom", () => {
    expect(studentTail(1.3, Number.POSITIVE_INFINITY)).toBe(normalCdf(-1.3));
    expect(studentQuantile(0.01, Number.POSITIVE_INFINITY)).toBe(normalQuantile(0.01));
    expectRelative(studentTail(1.3, 1e9), normalCdf(-1.3), 1e-8);
  });

  it("has a quantile that inverts the cdf", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-12, max: 0.5, noNaN: true }),
        fc.double({ min: 0.8, max: 500, noNaN: true }),
        (p, degrees) => {
          expectRelative(studentCdf(studentQuantile(p, degrees), degrees), p, 1e-11);
        },
      ),
    );
  });
});

describe("the incomplete beta function", () => {
  it.each(reference.incompleteBeta as number[][])(
    "agrees at x = %f, a = %f, b = %f",
    (x, a, b, lower, upper) => {
      const [p, q] = [lower, upper];
      const value = incompleteBeta(x, a, b);
      const complement = incompleteBeta(1 - x, b, a, x);
      if (p < 0.9) expectRelative(value, p, 1e-12);
      if (q < 0.9) expectRelative(complement, q, 1e-12);
      expectRelative(value + complement, 1, 1e-14);
    },
  );

  it("gives the F test of the published analysis of paper tensile strength", () => {
    // Montgomery & Runger, Applied Statistics and Probability for Engineers: F = 19.605207, p = 3.59258e-6.
    expectRelative(fisherTail(19.605207, 3, 20), 3.59258e-6, 2e-6);
  });

  it("makes F with one upper degree of freedom the square of t", () => {
    expectRelative(fisherTail(2.1 ** 2, 1, 7), 2 * studentTail(2.1, 7), 1e-14);
  });
});

describe("the logarithm of the gamma function", () => {
  it.each(reference.logGamma as number[][])("agrees at %f", (x, value) => {
    expect(Math.abs(logGamma(x) - value)).toBeLessThanOrEqual(4e-15 * Math.max(1, Math.abs(value)));
  });
});
