import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { equilibrium } from "../../../src/model/partition/equilibrium";
import { Refusal } from "../../../src/model/refusal";
import exact from "../../references/partition-equilibrium.json";
import trade from "../../references/partition-order.json";
import { apart, type Furnish, furnishes, spread, sum } from "./furnishes";

const consistencies = spread(1e-4, 0.25);
const doses = spread(1e-6, 1e4);

const split = (dose: number, consistency: number, furnish: Furnish) =>
  equilibrium(
    dose,
    consistency,
    furnish.shares,
    furnish.surfaces,
    furnish.capacities,
    furnish.halfLoads,
  );

/** The same balance by the plainest method there is: halve the bracket of ln C until it is a point. */
function byBisection(dose: number, consistency: number, furnish: Furnish): number[] {
  const water = (1 - consistency) / consistency / 1000;
  const at = (concentration: number) => [
    ...furnish.shares.map(
      (share, i) =>
        (share *
          (furnish.surfaces[i] as number) *
          (furnish.capacities[i] as number) *
          concentration) /
        ((furnish.halfLoads[i] as number) + concentration),
    ),
    water * concentration,
  ];
  let low = Math.log(1e-300);
  let high = Math.log(dose / water);
  for (let halvings = 0; halvings < 200; halvings++) {
    const middle = (low + high) / 2;
    if (sum(at(Math.exp(middle))) < dose) low = middle;
    else high = middle;
  }
  return at(Math.exp(low));
}

test("reproduces the split of the trade where the filler is there from the start", () => {
  const percent = split(trade.dose, trade.thickStock, trade).map((a) => (100 * a) / trade.dose);
  const { fibre, fines, clay, dissolved } = trade.fillerFirstPercent;
  for (const [i, expected] of [fibre, fines, clay, dissolved].entries())
    expect(Math.abs((percent[i] as number) - expected)).toBeLessThan(trade.agreementPercent);
});

test.each(exact.cases)(
  "agrees with 50-digit arithmetic at dose $dose, half loads $halfLoads",
  (known) => {
    const answer = split(known.dose, known.consistency, known);
    expect(apart(answer, known.split)).toBeLessThan(exact.relativeToDose);
  },
);

test("one component is the root of a quadratic", () => {
  // q = 10 kg/t, K = 5 mg/L, water 19/1000 kg/t per mg/L, dose 8: 0.019·C² + 2.095·C − 40 = 0.
  const concentration = (-2.095 + Math.sqrt(2.095 ** 2 + 4 * 0.019 * 40)) / (2 * 0.019);
  const [held, dissolved] = equilibrium(8, 0.05, [1], [2], [5], [5]) as [number, number];
  expect(held).toBeCloseTo((10 * concentration) / (5 + concentration), 12);
  expect(dissolved).toBeCloseTo(0.019 * concentration, 12);
});

describe("whatever the furnish, the dose and the consistency", () => {
  test("mass closes to 1e-12", () => {
    fc.assert(
      fc.property(doses, consistencies, furnishes(30), (dose, consistency, furnish) => {
        expect(Math.abs(sum(split(dose, consistency, furnish)) / dose - 1)).toBeLessThan(1e-12);
      }),
      { numRuns: 1000 },
    );
  });

  test("agrees with bisection", () => {
    fc.assert(
      fc.property(doses, consistencies, furnishes(), (dose, consistency, furnish) => {
        const answer = split(dose, consistency, furnish);
        expect(apart(answer, byBisection(dose, consistency, furnish))).toBeLessThan(1e-10);
      }),
      { numRuns: 300 },
    );
  });

  test("more additive means more on every component and more dissolved", () => {
    fc.assert(
      fc.property(doses, consistencies, furnishes(), (dose, consistency, furnish) => {
        const less = split(dose, consistency, furnish);
        const more = split(dose * 1.01, consistency, furnish);
        for (const [i, amount] of less.entries())
          expect(more[i] as number).toBeGreaterThanOrEqual(amount * (1 - 1e-12));
        expect(more.at(-1) as number).toBeGreaterThan(less.at(-1) as number);
      }),
    );
  });

  test("twice the dose on twice the capacities at twice the concentrations is twice the split", () => {
    fc.assert(
      fc.property(
        doses,
        consistencies,
        furnishes(),
        spread(1e-3, 1e3),
        (dose, consistency, furnish, factor) => {
          const scaled = split(dose * factor, consistency, {
            ...furnish,
            capacities: furnish.capacities.map((capacity) => capacity * factor),
            halfLoads: furnish.halfLoads.map((halfLoad) => halfLoad * factor),
          });
          const expected = split(dose, consistency, furnish).map((amount) => amount * factor);
          expect(apart(scaled, expected)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  test("components in another order give the same answer in that order", () => {
    fc.assert(
      fc.property(doses, consistencies, furnishes(), (dose, consistency, furnish) => {
        const turned = split(dose, consistency, {
          shares: furnish.shares.toReversed(),
          surfaces: furnish.surfaces.toReversed(),
          capacities: furnish.capacities.toReversed(),
          halfLoads: furnish.halfLoads.toReversed(),
        });
        const answer = split(dose, consistency, furnish);
        const expected = [...answer.slice(0, -1).toReversed(), answer.at(-1) as number];
        expect(apart(turned, expected)).toBeLessThan(1e-12);
      }),
    );
  });

  test("a component split in two alike takes the same in all", () => {
    fc.assert(
      fc.property(doses, consistencies, furnishes(), (dose, consistency, furnish) => {
        const halved = split(dose, consistency, {
          shares: furnish.shares.flatMap((share) => [share / 2, share / 2]),
          surfaces: furnish.surfaces.flatMap((surface) => [surface, surface]),
          capacities: furnish.capacities.flatMap((capacity) => [capacity, capacity]),
          halfLoads: furnish.halfLoads.flatMap((halfLoad) => [halfLoad, halfLoad]),
        });
        const pairs = split(dose, consistency, furnish)
          .slice(0, -1)
          .map((_, i) => (halved[2 * i] as number) + (halved[2 * i + 1] as number));
        expect(
          apart([...pairs, halved.at(-1) as number], split(dose, consistency, furnish)),
        ).toBeLessThan(1e-12);
      }),
    );
  });
});

describe("at the limits", () => {
  test("no dose is nothing anywhere", () => {
    expect(split(0, 0.03, trade)).toEqual([0, 0, 0, 0]);
  });

  test("an overwhelming dose fills every site and the rest stays dissolved", () => {
    // Filled sites by hand: 0.55·1.5·8, 0.25·8·10, 0.2·12·1.667.
    const answer = split(1e9, 0.03, trade);
    for (const [i, filled] of [6.6, 20, 4.0008].entries())
      expect(answer[i] as number).toBeCloseTo(filled, 4);
  });

  test("half loads near zero leave only what exceeds the sites", () => {
    const eager = { ...trade, halfLoads: [1e-9, 1e-9, 1e-9] };
    expect(split(40, 0.03, eager).at(-1) as number).toBeCloseTo(40 - 30.6008, 7);
    expect(split(7, 0.03, eager).at(-1) as number).toBeLessThan(1e-9);
  });

  test("three hundred components close as well", () => {
    const many = Array.from({ length: 300 }, (_, i) => i);
    const furnish = {
      shares: many.map(() => 1 / 300),
      surfaces: many.map((i) => 1 + i / 30),
      capacities: many.map((i) => 1 + (i % 7)),
      halfLoads: many.map((i) => 10 ** (-9 + (18 * i) / 299)),
    };
    const answer = split(10, 0.01, furnish);
    expect(answer).toHaveLength(301);
    expect(Math.abs(sum(answer) / 10 - 1)).toBeLessThan(1e-12);
    expect(apart(answer, byBisection(10, 0.01, furnish))).toBeLessThan(1e-11);
  });
});

test("shares that do not make a whole are refused with their sum", () => {
  const short = { ...trade, shares: [0.55, 0.2, 0.2] };
  expect(() => split(7, 0.03, short)).toThrow(Refusal);
  expect(() => split(7, 0.03, short)).toThrow("The shares sum to 0.95.");
  expect(sum(split(7, 0.03, { ...trade, shares: [0.55, 0.25, 0.204] }))).toBeCloseTo(7, 12);
});
