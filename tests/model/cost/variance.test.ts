import fc from "fast-check";
import { expect, test } from "vitest";
import { totalVariance, variance } from "../../../src/model/cost/variance";

test("price, usage and activity, by hand", () => {
  // 0.04·90 300; (90 300 − 8·10 500)·0.60; 500·8·0.60; and 57 792 − 48 000.
  const { price, usage, activity, total } = variance(0.6, 8, 10000, 0.64, 90300, 10500);
  expect(price).toBeCloseTo(3612, 9);
  expect(usage).toBeCloseTo(3780, 9);
  expect(activity).toBeCloseTo(2400, 9);
  expect(total).toBeCloseTo(57792 - 48000, 9);
});

/** Amounts of money, kilograms or tonnes with two decimals, as books hold them. */
const upTo = (most: number) => fc.integer({ min: 0, max: 100 * most }).map((whole) => whole / 100);

const period = fc
  .record({
    price: upTo(10),
    dose: upTo(50),
    output: upTo(100000),
    paid: upTo(10),
    used: upTo(1000000),
    made: upTo(100000),
  })
  .map((p) => ({
    parts: variance(p.price, p.dose, p.output, p.paid, p.used, p.made),
    gap: p.paid * p.used - p.price * p.dose * p.output,
    turnover: p.paid * p.used + p.price * p.dose * (p.output + p.made) + p.price * p.used,
  }));

test("the parts sum to the total exactly, and the total is the gap between actual and standard cost", () => {
  fc.assert(
    fc.property(period, ({ parts, gap, turnover }) => {
      expect(parts.price + parts.usage + parts.activity).toBe(parts.total);
      expect(Math.abs(parts.total - gap)).toBeLessThanOrEqual(1e-14 * turnover);
    }),
  );
});

test("the periods add up to the total, to the cent", () => {
  fc.assert(
    fc.property(fc.array(period, { minLength: 1, maxLength: 12 }), (periods) => {
      const year = totalVariance(periods.map(({ parts }) => parts));
      expect(year.price + year.usage + year.activity).toBe(year.total);
      const added = periods.reduce((sum, { parts }) => sum + parts.total, 0);
      expect(Math.abs(added - year.total)).toBeLessThan(0.005);
    }),
  );
});

test("standard performance has no variance", () => {
  expect(variance(0.6, 8, 10000, 0.6, 80000, 10000)).toEqual({
    price: 0,
    usage: 0,
    activity: 0,
    total: 0,
  });
});
