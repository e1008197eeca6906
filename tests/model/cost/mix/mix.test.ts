import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bindingLimits } from "../../../../src/model/cost/mix/account";
import { noAnswer, Refusal } from "../../../../src/model/refusal";
import type { Shape } from "../../../../src/model/strength/response";
import exact from "../../../references/least-cost-mix.json";
import { expectRefusal, expectRelative } from "../../expectations";
import { gains, lowerBound, type Problem, problems, solved, sum } from "./problems";

const plain: Problem = {
  target: 9,
  plateauGains: [8, 6, 10],
  scales: [6, 4, 8],
  prices: [0.55, 0.75, 0.6],
  maxima: [20, 15, 25],
  shapes: ["exponential", "exponential", "hyperbolic"],
  sideUse: [],
  sideLimits: [],
};

const straight = (changes: Partial<Problem>): Problem => ({
  target: 6,
  plateauGains: [1, 0.5],
  scales: [1, 1],
  prices: [2, 0.5],
  maxima: [10, 10],
  shapes: ["straight", "straight"],
  sideUse: [],
  sideLimits: [],
  ...changes,
});

const amounts = (p: Problem) => solved(p).options.map(({ amount }) => amount);

test.each(exact.cases)("agrees with other methods: $name", (known) => {
  const p = { ...known, shapes: known.shapes as Shape[], sideUse: known.sideUse as number[][] };
  expectRelative(solved(p).cost, known.cost, exact.relative);
});

describe("by hand", () => {
  test("two options alike share evenly", () => {
    const p = {
      ...plain,
      plateauGains: [8, 8],
      scales: [6, 6],
      prices: [0.5, 0.5],
      maxima: [40, 40],
    };
    const each = -6 * Math.log(1 - 9 / 16);
    for (const amount of amounts({ ...p, shapes: ["exponential", "exponential"] }))
      expect(amount).toBeCloseTo(each, 8);
  });

  test("two exponential options are used until their next N·m/g costs the same", () => {
    const p = {
      ...plain,
      target: 8,
      plateauGains: [8, 6],
      scales: [6, 4],
      prices: [0.55, 0.75],
      maxima: [99, 99],
    };
    const { options, nextGain } = solved({ ...p, shapes: ["exponential", "exponential"] });
    // p·s/(g − gain) = m for both, hence m = (0.55·6 + 0.75·4)/(8 + 6 − 8).
    expect(nextGain).toBeCloseTo(6.3 / 6, 9);
    for (const { marginalCost } of options) expect(marginalCost).toBeCloseTo(6.3 / 6, 9);
    expect(options[0]?.amount).toBeCloseTo(-6 * Math.log(3.3 / 1.05 / 8), 8);
  });

  test("straight options are used in the order of their price per gain", () => {
    // 1 money per N·m/g against 2: 5 from the second at its maximum of 10, then 1 from the first.
    const mix = solved(straight({}));
    expect(mix.options[0]?.amount).toBeCloseTo(1, 9);
    expect(mix.options[1]).toMatchObject({ amount: 10, cost: 5, ceiling: "maximum" });
    expect(mix.cost).toBeCloseTo(7, 9);
    expect(mix.nextGain).toBeCloseTo(2, 6);
  });

  test("a side limit turns the order round, is named, and has a worth", () => {
    // The second uses 1 of 4 a unit: 4 of it, 2 N·m/g; 4 from the first. A unit more saves 0.5.
    const mix = solved(straight({ sideUse: [[0, 1]], sideLimits: [4] }));
    expect(mix.options[0]?.amount).toBeCloseTo(4, 9);
    expect(mix.options[1]?.amount).toBeCloseTo(4, 9);
    expect(mix.limits[0]?.binds).toBe(true);
    expect(mix.limits[0]?.worth).toBeCloseTo(0.5, 6);
  });

  test("what none is allowed of is not used", () => {
    const mix = solved(straight({ sideUse: [[0, 1]], sideLimits: [0] }));
    expect(mix.options.map(({ amount }) => amount)).toEqual([expect.closeTo(6, 9), 0]);
    expect(mix.limits[0]).toMatchObject({ use: 0, binds: true });
  });

  test("an option that gives relief makes room for another", () => {
    // None to spare: each unit of the second needs half a unit of the first.
    const mix = solved(straight({ sideUse: [[-2, 1]], sideLimits: [0] }));
    // x₁ = x₂/2, gain x₂: 6 and 3; cheaper than all from the first at 12.
    expect(mix.options[0]?.amount).toBeCloseTo(3, 8);
    expect(mix.options[1]?.amount).toBeCloseTo(6, 8);
    expect(mix.cost).toBeCloseTo(9, 8);
  });

  test("a peaked option goes up to its peak and no further", () => {
    const p: Problem = {
      ...plain,
      target: 5,
      plateauGains: [5, 1],
      scales: [4, 1],
      prices: [0.01, 50],
      maxima: [99, 99],
      shapes: ["peaked", "straight"],
    };
    const [first] = solved(p).options;
    expect(first?.amount as number).toBeLessThanOrEqual(4);
    expect(first?.amount as number).toBeGreaterThan(3.9);
  });

  test("the saving is against the cheapest option that does it alone", () => {
    const mix = solved(plain);
    // The hyperbolic option alone: 9/(10−9)·8 = 72 is above its maximum; no other reaches 9 at all.
    expect(mix.single).toBeUndefined();
    const easier = solved({ ...plain, target: 4 });
    const alone = [-6 * Math.log(0.5) * 0.55, -4 * Math.log(1 / 3) * 0.75, (4 / 6) * 8 * 0.6];
    expect(easier.single?.option).toBe(1);
    expect(easier.single?.cost).toBeCloseTo(Math.min(...alone), 12);
    expect(easier.single?.saving).toBeCloseTo(Math.min(...alone) - easier.cost, 12);
    expect(easier.single?.saving as number).toBeGreaterThan(0);
  });
});

describe("whatever the options and limits", () => {
  test("meets the target, keeps every limit, and costs what is proven to be the least", () => {
    fc.assert(
      fc.property(problems(), (p) => {
        const mix = solved(p);
        const used = mix.options.map(({ amount }) => amount);
        expect(sum(gains(p, used))).toBeGreaterThan(p.target * (1 - 1e-9));
        for (const [i, amount] of used.entries()) {
          expect(amount).toBeGreaterThanOrEqual(0);
          expect(amount).toBeLessThanOrEqual(p.maxima[i] as number);
        }
        for (const [j, { use }] of mix.limits.entries())
          expect(use).toBeLessThanOrEqual((p.sideLimits[j] as number) * (1 + 1e-9));
        const bound = lowerBound(
          p,
          mix.nextGain as number,
          mix.limits.map(({ worth }) => worth as number),
        );
        expect((mix.cost - bound) / mix.cost).toBeLessThan(1e-8);
        expect((mix.cost - bound) / mix.cost).toBeGreaterThan(-1e-9);
      }),
      { numRuns: 400 },
    );
  });

  test("shares sum to 1, and no single option is cheaper", () => {
    fc.assert(
      fc.property(problems(), (p) => {
        const { options, cost, single } = solved(p);
        expect(sum(options.map(({ shareOfGain }) => shareOfGain))).toBeCloseTo(1, 12);
        expect(sum(options.map((option) => option.cost))).toBeCloseTo(cost, 12);
        if (single !== undefined) expect(single.cost).toBeGreaterThanOrEqual(cost * (1 - 1e-9));
      }),
    );
  });

  test("prices in another currency change only the cost", () => {
    fc.assert(
      fc.property(problems(), fc.double({ min: 0.01, max: 100, noNaN: true }), (p, rate) => {
        const abroad = solved({ ...p, prices: p.prices.map((price) => price * rate) });
        expectRelative(abroad.cost, solved(p).cost * rate, 1e-8);
      }),
    );
  });

  test("options in another order cost the same", () => {
    fc.assert(
      fc.property(problems(), (p) => {
        const turned = solved({
          ...p,
          plateauGains: p.plateauGains.toReversed(),
          scales: p.scales.toReversed(),
          prices: p.prices.toReversed(),
          maxima: p.maxima.toReversed(),
          shapes: p.shapes.toReversed(),
          sideUse: p.sideUse.map((use) => use.toReversed()),
        });
        expectRelative(turned.cost, solved(p).cost, 1e-8);
      }),
    );
  });

  test("a higher target costs more, and about what the next gain was said to cost", () => {
    fc.assert(
      fc.property(problems(), (p) => {
        const before = solved(p);
        const after = solved({ ...p, target: p.target * 1.001 });
        const added = after.cost - before.cost;
        expect(added).toBeGreaterThanOrEqual(
          0.999 * (before.nextGain as number) * p.target * 0.001 - 1e-8 * before.cost,
        );
      }),
    );
  });
});

test("the limits that bind are named", () => {
  const used = {
    ...straight({
      sideUse: [
        [0, 1],
        [1, 0],
      ],
      sideLimits: [4, 4],
    }),
    maxima: [4, 10],
  };
  expect(bindingLimits(solved(used))).toBe("maximum of option 1, side limit 1, side limit 2");
  expect(bindingLimits(solved(plain))).toBe("none");
});

describe("is refused", () => {
  test.each([
    [
      "uses without a limit",
      { sideUse: [[1, 1, 1]] },
      "sideUse has 1 column and sideLimits has 0 values.",
    ],
    [
      "a limit without uses",
      { sideLimits: [4] },
      "sideUse has 0 columns and sideLimits has 1 value.",
    ],
    [
      "uses of some options only",
      { sideUse: [[1, 1]], sideLimits: [4] },
      "sideUse has 2 rows for 3 options.",
    ],
    [
      "a price for some options only",
      { prices: [1, 1] },
      "plateauGains has 3 values and prices has 2.",
    ],
    ["amounts out of all proportion", { maxima: [20, 20, 1e300] }, "too far apart"],
  ])("%s", (_, change, message) => {
    expectRefusal("impossible input", message, () => solved({ ...plain, ...change }));
  });

  test("but not a single option with its uses in a row", () => {
    const alone: Problem = {
      ...plain,
      target: 4,
      plateauGains: [8],
      scales: [6],
      prices: [0.55],
      maxima: [20],
      shapes: ["exponential"],
    };
    expect(solved({ ...alone, sideUse: [[1, 2]], sideLimits: [9, 9] }).limits[1]?.use).toBeCloseTo(
      2 * 6 * Math.LN2,
      8,
    );
  });
});

describe("out of the ordinary", () => {
  test("no target costs nothing", () => {
    const mix = solved({ ...plain, target: 0 });
    expect(mix.cost).toBe(0);
    expect(mix.options.map(({ amount, shareOfGain }) => [amount, shareOfGain])).toEqual([
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
    expect(mix.options[0]?.marginalCost).toBeCloseTo((0.55 * 6) / 8, 12);
    expect(mix.nextGain).toBeUndefined();
    expect(mix.single?.saving).toBe(0);
  });

  test("an option never worth using is not used at all", () => {
    const mix = solved({ ...plain, prices: [0.55, 75, 0.6] });
    expect(mix.options[1]).toMatchObject({ amount: 0, cost: 0, shareOfGain: 0 });
    expect(mix.options[1]?.marginalCost as number).toBeGreaterThan(mix.nextGain as number);
  });

  test("an option that does it best alone saves nothing against itself, not even a rounding", () => {
    const alone = solved(straight({ target: 0.3, plateauGains: [8, 6], prices: [0.5, 0.7] }));
    expect(alone.options[1]?.amount).toBe(0);
    expect(alone.single).toMatchObject({ option: 1, saving: 0 });
  });

  test("an option at its plateau has no price for a next N·m/g", () => {
    const whole = { ...plain, target: 14, plateauGains: [8, 6], scales: [6, 4] };
    const mix = solved({
      ...whole,
      prices: [0.5, 0.7],
      maxima: [1e9, 1e9],
      shapes: ["exponential", "exponential"],
    });
    expect(mix.options.map(({ ceiling }) => ceiling)).toEqual(["plateau", "plateau"]);
    expect(mix.options.map(({ marginalCost }) => marginalCost)).toEqual([undefined, undefined]);
  });

  test("a target out of reach says how far the options reach, and that can be reached", () => {
    const limited = { ...plain, target: 30, sideUse: [[1, 1, 0.5]], sideLimits: [10] };
    const reach = largest(limited);
    expect(reach).toBeGreaterThan(8);
    expectRelative(
      sum(solved({ ...limited, target: reach }).options.map((o) => o.gain)),
      reach,
      1e-9,
    );
    expectRefusal("no answer", "is out of reach", () =>
      solved({ ...limited, target: reach * 1.002 }),
    );
  });

  test("a target of exactly what can be reached leaves no choice", () => {
    // 4 of the first and 4 of the second is all that is allowed: 4·1 + 4·0.5.
    const p = { ...straight({ sideUse: [[0, 1]], sideLimits: [4] }), maxima: [4, 10] };
    for (const amount of amounts(p)) expect(amount).toBeCloseTo(4, 8);
    expect(amounts(straight({ target: 15 }))).toEqual([10, 10]);
  });

  test("without limits the reach is that of all options together", () => {
    const all = 8 * (1 - Math.exp(-20 / 6)) + 6 * (1 - Math.exp(-15 / 4)) + (10 * 25) / 33;
    expectRelative(largest({ ...plain, target: 99 }), all, 1e-3);
  });

  test("what is said to be within reach is so for any options and limits", () => {
    fc.assert(
      fc.property(problems(6), (p) => {
        const reach = largest({ ...p, target: 1e4 });
        expect(
          sum(solved({ ...p, target: reach * 0.999 }).options.map((o) => o.gain)),
        ).toBeGreaterThan(reach * 0.998);
      }),
    );
  });

  test("sixty-four options under four limits", () => {
    const many = Array.from({ length: 64 }, (_, i) => i);
    const p: Problem = {
      target: 60,
      plateauGains: many.map((i) => 1 + (i % 9)),
      scales: many.map((i) => 1 + (i % 7)),
      prices: many.map((i) => 0.2 + (i % 11) / 5),
      maxima: many.map((i) => 2 + (i % 5)),
      shapes: many.map((i) => (["exponential", "hyperbolic", "peaked"] as const)[i % 3] as Shape),
      sideUse: [0, 1, 2, 3].map((j) => many.map((i) => ((i * (j + 3)) % 8) / 8)),
      sideLimits: [20, 22, 24, 26],
    };
    const mix = solved(p);
    const bound = lowerBound(
      p,
      mix.nextGain as number,
      mix.limits.map(({ worth }) => worth as number),
    );
    expect((mix.cost - bound) / mix.cost).toBeLessThan(1e-9);
  });

  test("a maximum of no consequence does no harm", () => {
    const wide = solved({ ...plain, maxima: [1e6, 1e6, 1e6] });
    const bound = lowerBound({ ...plain, maxima: [240, 160, 1e6] }, wide.nextGain as number, []);
    expect((wide.cost - bound) / wide.cost).toBeLessThan(1e-9);
  });
});

/** The largest gain that a refusal names. */
function largest(p: Problem): number {
  try {
    solved(p);
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return Number(/the options reach ([\d.e+-]+) N/.exec(refusal.message)?.[1]);
  }
  return noAnswer("the target was reached");
}
