import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { equilibrium } from "../../../src/model/partition/equilibrium";
import { timedPartition } from "../../../src/model/partition/timed";
import exact from "../../references/partition-timed.json";
import { expectRefusal, expectRelative } from "../expectations";
import { apart, type Furnish, furnishes, spread, sum } from "./furnishes";

interface Uptake extends Furnish {
  dose: number;
  consistency: number;
  rates: number[];
}

const follow = (times: number[], uptake: Uptake) =>
  timedPartition(
    times,
    uptake.dose,
    uptake.consistency,
    uptake.shares,
    uptake.surfaces,
    uptake.capacities,
    uptake.halfLoads,
    uptake.rates,
  );

/** Rates from 1e-7 to 1e-1 L/(mg·s), so that one uptake mixes rates up to a million times apart. */
const uptakes = furnishes(5, [1e-2, 1e3]).chain((furnish) =>
  fc
    .record({
      dose: spread(1e-2, 1e2),
      consistency: spread(1e-3, 0.25),
      rates: fc.array(spread(1e-7, 1e-1), {
        minLength: furnish.shares.length,
        maxLength: furnish.shares.length,
      }),
    })
    .map((rest): Uptake => ({ ...furnish, ...rest })),
);

const steep = exact.cases.find(({ name }) => name === "rates 1e5 apart") as Uptake;

test.each(exact.cases)("agrees with other methods: $name", (known) => {
  for (const [row, amounts] of follow(known.times, known).entries())
    for (const [i, amount] of amounts.entries())
      expectRelative(amount, known.rows[row]?.[i] as number, exact.relative);
});

test("one component follows the closed solution", () => {
  // dA/dt = (k/w)·(A−r₁)·(A−r₂), with w the kg/t dissolved at 1 mg/L and r the roots of
  // A² − (dose + q + K·w)·A + dose·q: A = r₁·r₂·(1−e)/(r₂ − r₁·e), e = exp(−(k/w)·(r₂−r₁)·t).
  const [dose, filled, halfLoad, rate, water] = [8, 10, 5, 1e-3, 0.019];
  const middle = (dose + filled + halfLoad * water) / 2;
  const half = Math.sqrt(middle * middle - dose * filled);
  const [low, high] = [middle - half, middle + half];
  const times = [0.001, 0.1, 1, 3, 10, 100];
  const uptake = {
    dose,
    consistency: 0.05,
    shares: [1],
    surfaces: [2],
    capacities: [5],
    halfLoads: [halfLoad],
    rates: [rate],
  };
  for (const [row, amounts] of follow(times, uptake).entries()) {
    const decayed = Math.exp((-rate / water) * (high - low) * (times[row] as number));
    const held = (low * high * (1 - decayed)) / (high - low * decayed);
    expectRelative(amounts[0] as number, held, 1e-6);
    expectRelative(amounts[1] as number, dose - held, 1e-6);
  }
});

describe("whatever the furnish and the rates", () => {
  test("mass closes to 1e-12 at all times, and no amount is below 0", () => {
    fc.assert(
      fc.property(uptakes, spread(1e-3, 1e6), (uptake, time) => {
        for (const row of follow([0, time, 10 * time], uptake)) {
          expect(Math.abs(sum(row) / uptake.dose - 1)).toBeLessThan(1e-12);
          expect(Math.min(...row)).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  test("a long time leads to equilibrium", () => {
    fc.assert(
      fc.property(uptakes, (uptake) => {
        const { dose, consistency, shares, surfaces, capacities, halfLoads } = uptake;
        const rest = equilibrium(dose, consistency, shares, surfaces, capacities, halfLoads);
        const [after] = follow([1e12], uptake) as [number[]];
        expect(apart(after, rest)).toBeLessThan(1e-9);
      }),
    );
  });

  test("rates twice as high take half the time", () => {
    fc.assert(
      fc.property(uptakes, spread(1e-1, 1e4), (uptake, time) => {
        const doubled = { ...uptake, rates: uptake.rates.map((rate) => 2 * rate) };
        const [slow] = follow([time], uptake) as [number[]];
        const [quick] = follow([time / 2], doubled) as [number[]];
        expect(apart(quick, slow)).toBeLessThan(1e-7);
      }),
    );
  });

  test("components in another order give the same answer in that order", () => {
    fc.assert(
      fc.property(uptakes, spread(1e-1, 1e4), (uptake, time) => {
        const [turned] = follow([time], {
          ...uptake,
          shares: uptake.shares.toReversed(),
          surfaces: uptake.surfaces.toReversed(),
          capacities: uptake.capacities.toReversed(),
          halfLoads: uptake.halfLoads.toReversed(),
          rates: uptake.rates.toReversed(),
        }) as [number[]];
        const [answer] = follow([time], uptake) as [number[]];
        const expected = [...answer.slice(0, -1).toReversed(), answer.at(-1) as number];
        expect(apart(turned, expected)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe("the times", () => {
  test("may come in any order and more than once", () => {
    const sorted = follow([0, 1, 60, 3600], steep);
    const shuffled = follow([60, 3600, 0, 60, 1], steep);
    expect(shuffled).toEqual([sorted[2], sorted[3], sorted[0], sorted[2], sorted[1]]);
  });

  test("at the start all is dissolved", () => {
    expect(follow([0], steep)).toEqual([[0, 0, 0, 7]]);
  });

  test("more of them between do not change the answer", () => {
    const [alone] = follow([3600], steep) as [number[]];
    const among = follow(
      Array.from({ length: 500 }, (_, i) => 3600 * (i / 499) ** 4),
      steep,
    ).at(-1) as number[];
    expect(apart(among, alone)).toBeLessThan(1e-7);
  });
});

test("nothing dosed is nothing taken up", () => {
  expect(follow([10], { ...steep, dose: 0 })).toEqual([[0, 0, 0, 0]]);
});

test("three hundred components with rates a million times apart", () => {
  const many = Array.from({ length: 300 }, (_, i) => i);
  const uptake = {
    dose: 7,
    consistency: 0.03,
    shares: many.map(() => 1 / 300),
    surfaces: many.map((i) => 1 + (i % 5)),
    capacities: many.map(() => 5),
    halfLoads: many.map((i) => 1 + (i % 20)),
    rates: many.map((i) => 10 ** (-6 + (6 * i) / 299)),
  };
  for (const row of follow([1, 60, 3600], uptake))
    expect(Math.abs(sum(row) / 7 - 1)).toBeLessThan(1e-12);
});

test("a furnish that is not whole, or rates for some components only, are refused", () => {
  expectRefusal("impossible input", "The shares sum to 0.9.", () =>
    follow([1], { ...steep, shares: [0.5, 0.2, 0.2] }),
  );
  expectRefusal("impossible input", "shares has 3 values and rates has 2.", () =>
    follow([1], { ...steep, rates: [1, 1] }),
  );
});
