import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { equilibrium } from "../../../src/model/partition/equilibrium";
import { orderedPartition, orderedWalk } from "../../../src/model/partition/ordered";
import trade from "../../references/partition-order.json";
import exact from "../../references/partition-ordered.json";
import { expectRefusal } from "../expectations";
import { apart, type Furnish, furnishes, spread, sum } from "./furnishes";

interface Plan {
  doses: number[];
  dosePositions: number[];
  componentPositions: number[];
  consistencies: number[];
}

const split = (plan: Plan, furnish: Furnish, transfer = 0) =>
  orderedPartition(
    plan.doses,
    plan.dosePositions,
    plan.componentPositions,
    plan.consistencies,
    furnish.shares,
    furnish.surfaces,
    furnish.capacities,
    furnish.halfLoads,
    transfer,
  );

const LAST = 5;
const positions = fc.integer({ min: 1, max: LAST });

/** A furnish and a plan of up to five positions, diluted ever more on the way. */
const walks = furnishes(6).chain((furnish) =>
  fc
    .record({
      additions: fc.array(fc.tuple(spread(1e-3, 100), positions), { minLength: 1, maxLength: 4 }),
      componentPositions: fc.array(positions, {
        minLength: furnish.shares.length,
        maxLength: furnish.shares.length,
      }),
      consistencies: fc.array(spread(1e-3, 0.2), { minLength: LAST, maxLength: LAST }),
    })
    .map(({ additions, componentPositions, consistencies }) => {
      const dosePositions = additions.map(([, position]) => position);
      const last = Math.max(...dosePositions, ...componentPositions);
      const plan: Plan = {
        doses: additions.map(([dose]) => dose),
        dosePositions,
        componentPositions,
        consistencies: consistencies.toSorted((a, b) => b - a).slice(0, last),
      };
      return { furnish, plan };
    }),
);

/** The rule in its plainest form: the sites of one position by halving the bracket of ln C. */
function byBisection(
  { doses, dosePositions, componentPositions, consistencies }: Plan,
  f: Furnish,
) {
  const held = f.shares.map(() => 0);
  let pool = 0;
  for (let position = 1; position <= consistencies.length; position++) {
    pool += sum(doses.filter((_, j) => dosePositions[j] === position));
    const present = f.shares.flatMap((_, i) =>
      (componentPositions[i] as number) <= position ? [i] : [],
    );
    if (present.length === 0 || pool === 0) continue;
    const consistency = consistencies[position - 1] as number;
    const water =
      (sum(present.map((i) => f.shares[i] as number)) * (1 - consistency)) / consistency / 1000;
    const uptake = (i: number, c: number) => {
      const filled =
        (f.shares[i] as number) * (f.surfaces[i] as number) * (f.capacities[i] as number);
      return Math.max(0, (filled * c) / ((f.halfLoads[i] as number) + c) - (held[i] as number));
    };
    let low = Math.log(1e-200);
    let high = Math.log(pool / water);
    for (let halvings = 0; halvings < 100; halvings++) {
      const middle = (low + high) / 2;
      const c = Math.exp(middle);
      if (sum(present.map((i) => uptake(i, c))) + water * c < pool) low = middle;
      else high = middle;
    }
    const c = Math.exp(low);
    const taken = present.map((i) => uptake(i, c));
    for (const [k, i] of present.entries()) held[i] = (held[i] as number) + (taken[k] as number);
    pool = water * c;
  }
  return [...held, pool];
}

test.each(exact.cases)("agrees with 50-digit arithmetic: $name", (known) => {
  expect(apart(split(known, known, known.transfer), known.split)).toBeLessThan(
    exact.relativeToDose,
  );
});

test("reproduces the trade: filler that joins after the additive takes next to none", () => {
  const plan = {
    doses: [trade.dose],
    dosePositions: [1],
    componentPositions: [1, 1, 2],
    consistencies: [trade.thickStock, trade.thinStock],
  };
  const percent = split(plan, trade).map((amount) => (100 * amount) / trade.dose);
  const { fibre, fines, clay } = trade.fillerLastPercent;
  for (const [i, expected] of [fibre, fines, clay].entries())
    expect(Math.abs((percent[i] as number) - expected)).toBeLessThan(trade.agreementPercent);
});

describe("whatever the furnish and the plan", () => {
  test("mass closes to 1e-12, with and without transfer", () => {
    fc.assert(
      fc.property(
        walks,
        fc.double({ min: 0, max: 1, noNaN: true }),
        ({ furnish, plan }, transfer) => {
          const closure = sum(split(plan, furnish, transfer)) / sum(plan.doses) - 1;
          expect(Math.abs(closure)).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 500 },
    );
  });

  test("agrees with bisection of the rule as it is worded", () => {
    fc.assert(
      fc.property(walks, ({ furnish, plan }) => {
        expect(apart(split(plan, furnish), byBisection(plan, furnish))).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  test("nothing held lets go, and no component takes anything before it joins", () => {
    fc.assert(
      fc.property(walks, ({ furnish, plan }) => {
        const { shares, surfaces, capacities, halfLoads } = furnish;
        let before = shares.map(() => 0);
        for (const stage of orderedWalk(
          plan.doses,
          plan.dosePositions,
          plan.componentPositions,
          plan.consistencies,
          shares,
          surfaces,
          capacities,
          halfLoads,
        )) {
          for (const [i, amount] of stage.held.entries()) {
            expect(amount).toBeGreaterThanOrEqual(before[i] as number);
            if ((plan.componentPositions[i] as number) > stage.position) expect(amount).toBe(0);
          }
          before = [...stage.held];
        }
      }),
    );
  });

  test("full transfer is the equilibrium of the whole, in any order", () => {
    fc.assert(
      fc.property(walks, ({ furnish, plan }) => {
        const whole = equilibrium(
          sum(plan.doses),
          plan.consistencies.at(-1) as number,
          furnish.shares,
          furnish.surfaces,
          furnish.capacities,
          furnish.halfLoads,
        );
        expect(apart(split(plan, furnish, 1), whole)).toBeLessThan(1e-12);
      }),
    );
  });

  test("one position is the equilibrium", () => {
    fc.assert(
      fc.property(furnishes(), spread(1e-3, 1e3), spread(1e-3, 0.25), (furnish, dose, c) => {
        const { shares, surfaces, capacities, halfLoads } = furnish;
        const plan = {
          doses: [dose],
          dosePositions: [1],
          componentPositions: shares.map(() => 1),
          consistencies: [c],
        };
        const whole = equilibrium(dose, c, shares, surfaces, capacities, halfLoads);
        expect(apart(split(plan, furnish), whole)).toBeLessThan(1e-12);
      }),
    );
  });

  test("a position at which nothing joins only dilutes, and changes nothing", () => {
    fc.assert(
      fc.property(walks, ({ furnish, plan }) => {
        const later = (position: number) => 2 * position;
        const stretched = {
          doses: plan.doses,
          dosePositions: plan.dosePositions.map(later),
          componentPositions: plan.componentPositions.map(later),
          consistencies: plan.consistencies.flatMap((c) => [c, c]),
        };
        expect(apart(split(stretched, furnish), split(plan, furnish))).toBeLessThan(1e-12);
      }),
    );
  });

  test("components in another order give the same answer in that order", () => {
    fc.assert(
      fc.property(walks, ({ furnish, plan }) => {
        const turned = split(
          { ...plan, componentPositions: plan.componentPositions.toReversed() },
          {
            shares: furnish.shares.toReversed(),
            surfaces: furnish.surfaces.toReversed(),
            capacities: furnish.capacities.toReversed(),
            halfLoads: furnish.halfLoads.toReversed(),
          },
        );
        const answer = split(plan, furnish);
        const expected = [...answer.slice(0, -1).toReversed(), answer.at(-1) as number];
        expect(apart(turned, expected)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe("the order", () => {
  const threeWays = { doses: [7], consistencies: [0.03] };
  const clayOf = (plan: Plan) => split(plan, trade)[2] as number;

  test("the later the clay joins, the less it takes", () => {
    const first = clayOf({ ...threeWays, dosePositions: [2], componentPositions: [2, 2, 1] });
    const alone = clayOf({ ...threeWays, dosePositions: [1], componentPositions: [2, 2, 1] });
    const last = clayOf({ ...threeWays, dosePositions: [1], componentPositions: [1, 1, 2] });
    expect(alone).toBeGreaterThan(first);
    expect(first).toBeGreaterThan(last);
  });

  test("a component that joins where nothing is dissolved any more takes nothing", () => {
    const eager = { ...trade, halfLoads: [1e-9, 1e-9, 1] };
    const clay = split(
      { ...threeWays, dosePositions: [1], componentPositions: [1, 1, 2] },
      eager,
    )[2];
    expect(clay as number).toBeLessThan(1e-8);
  });

  test("a dose before any solids waits for them, whatever the consistency there", () => {
    const early = split(
      {
        doses: [7],
        dosePositions: [1],
        componentPositions: [2, 2, 2],
        consistencies: [0.001, 0.03],
      },
      trade,
    );
    const along = split(
      { doses: [7], dosePositions: [1], componentPositions: [1, 1, 1], consistencies: [0.03] },
      trade,
    );
    expect(early).toEqual(along);
  });

  test("a place without solids needs no consistency, one with solids does", () => {
    const plan = { doses: [7], dosePositions: [1], componentPositions: [2, 2, 3] };
    expect(split({ ...plan, consistencies: [0, 0.03, 0.008] }, trade)).toEqual(
      split({ ...plan, consistencies: [0.1, 0.03, 0.008] }, trade),
    );
    expectRefusal(
      "impossible input",
      "The consistency at position 3, where there are solids,",
      () => split({ ...plan, consistencies: [0, 0.03, 0] }, trade),
    );
  });

  test("one consistency serves every position", () => {
    const plan = { doses: [3, 4], dosePositions: [1, 3], componentPositions: [1, 2, 3] };
    expect(split({ ...plan, consistencies: [0.02] }, trade)).toEqual(
      split({ ...plan, consistencies: [0.02, 0.02, 0.02] }, trade),
    );
  });
});

describe("is refused", () => {
  const plan = {
    doses: [7],
    dosePositions: [1],
    componentPositions: [1, 1, 2],
    consistencies: [0.03, 0.008],
  };

  test.each([
    [
      "too few consistencies",
      { componentPositions: [1, 1, 3] },
      "The number of consistencies is 2, and the last position in use is 3. Give one consistency, or 3: one for each position.",
    ],
    [
      "a consistency for a position that is not in use",
      { componentPositions: [1, 1, 1] },
      "The number of consistencies is 2, and the last position in use is 1. Give one consistency.",
    ],
    ["thickening", { consistencies: [0.008, 0.03] }, "The water falls from 99.2 to 32.3333 m³"],
    ["a dose without a position", { doses: [3, 4] }, "doses has 2 values and dosePositions has 1."],
  ])("%s", (_, change, message) => {
    expectRefusal("impossible input", message, () => split({ ...plan, ...change }, trade));
  });

  test("a furnish that is not whole", () => {
    expectRefusal("impossible input", "The shares sum to 0.95.", () =>
      split(plan, { ...trade, shares: [0.55, 0.2, 0.2] }),
    );
  });
});
