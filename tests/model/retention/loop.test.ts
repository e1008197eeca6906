import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loopBalance } from "../../../src/model/retention/balance";
import { headboxLoading, overallRetention } from "../../../src/model/retention/loop";
import { overallRetentionOfMixture } from "../../../src/model/retention/overall";
import { expectRefusal, expectRelative } from "../expectations";

const share = fc.double({ min: 0, max: 1, noNaN: true });
const firstPass = fc.double({ min: 0.01, max: 1, noNaN: true });

describe("the white-water loop", () => {
  it("keeps 78 % of native starch that comes round whole, 25 % where half is degraded", () => {
    // 1 − 0.85·0.95 = 0.1925, and 1 − 0.85·0.95·0.5 = 0.59625: 0.7792 and 0.2516.
    expectRelative(overallRetention(0.15, 0.95, 0), 0.15 / 0.1925, 1e-12);
    expectRelative(overallRetention(0.15, 0.95, 0.5), 0.15 / 0.59625, 1e-12);
  });

  it("is the sum of the passes, a geometric series", () => {
    let fresh = 1;
    let kept = 0;
    for (let pass = 0; pass < 400; pass++) {
      kept += fresh * 0.3;
      fresh *= 0.7 * 0.8 * 0.9;
    }
    expectRelative(overallRetention(0.3, 0.8, 0.1), kept, 1e-12);
  });

  it.each([
    ["nothing recycled", 0.4, 0, 0.2, 0.4],
    ["all of the recycled part degraded", 0.4, 0.9, 1, 0.4],
    ["a closed loop without decay", 0.4, 1, 0, 1],
    ["full retention", 1, 0.9, 0.3, 1],
    ["no retention", 0, 0.9, 0, 0],
  ])("with %s", (_, f, r, d, expected) => {
    expectRelative(overallRetention(f, r, d), expected, 1e-12);
  });

  it.each([1e-9, 1e-13, 1e-18, 1e-300])(
    "keeps its digits where next to nothing leaves in a pass: first-pass retention %s",
    (f) => {
      // With all of it returning whole, everything ends in the sheet: f/(1 − (1 − f)) = 1 by algebra.
      expectRelative(overallRetention(f, 1, 0), 1, 1e-15);
      expectRelative(overallRetention(f, 1, f), 1 / (2 - f), 1e-15);
      expectRelative(headboxLoading(f, 1, 0), 1 / f, 1e-15);
    },
  );

  it("never keeps less than one pass, nor more than all", () => {
    fc.assert(
      fc.property(firstPass, share, share, (f, r, d) => {
        const retention = overallRetention(f, r, d);
        expect(retention).toBeGreaterThanOrEqual(f);
        expect(retention).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("has no steady state where nothing leaves", () => {
    expectRefusal("no answer", "builds up without end", () => overallRetention(0, 1, 0));
  });
});

describe("the balance of the loop", () => {
  it("closes on the dose", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        firstPass,
        share,
        share,
        (dose, f, r, d) => {
          const balance = loopBalance(dose, f, r, d);
          expectRelative(balance.retained + balance.toSewer + balance.degraded, dose, 1e-12);
          expectRelative(balance.retained, dose * balance.overallRetention, 1e-12);
          expect(balance.overallRetention).toBe(overallRetention(f, r, d));
        },
      ),
    );
  });

  it("carries more in the headbox than the fresh dose", () => {
    // 10/(1 − 0.4·0.5) = 12.5 kg/t, of which 7.5 stay, 2.5 leave; nothing is degraded.
    const balance = loopBalance(10, 0.6, 0.5, 0);
    expectRelative(balance.headboxLoad, 12.5, 1e-12);
    expectRelative(balance.retained, 7.5, 1e-12);
    expectRelative(balance.toSewer, 2.5, 1e-12);
    expect(balance.degraded).toBe(0);
    expectRelative(headboxLoading(0.6, 0.5, 0), 1.25, 1e-12);
  });
});

describe("overall retention of a mixture", () => {
  it("is that of the loop for one population", () => {
    expect(overallRetentionOfMixture([3], [0.4], [0.8], [0.1])).toBe(
      overallRetention(0.4, 0.8, 0.1),
    );
  });

  it("is below that of the blended first-pass retention", () => {
    const amounts = [6, 4];
    const mixture = overallRetentionOfMixture(amounts, [0.95, 0.1], [0.9], [0.2]);
    expect(mixture).toBeLessThan(overallRetention(0.6 * 0.95 + 0.4 * 0.1, 0.9, 0.2));
  });

  it("takes recycled and degraded once, or for each population", () => {
    const each = overallRetentionOfMixture([6, 4], [0.9, 0.2], [0.8, 0.8], [0.1, 0.1]);
    expect(overallRetentionOfMixture([6, 4], [0.9, 0.2], [0.8], [0.1])).toBe(each);
    const first = overallRetention(0.9, 0.8, 0);
    const second = overallRetention(0.2, 0.7, 0.5);
    expectRelative(
      overallRetentionOfMixture([6, 4], [0.9, 0.2], [0.8, 0.7], [0, 0.5]),
      0.6 * first + 0.4 * second,
      1e-12,
    );
  });

  it("passes over an empty population, even one that would never settle", () => {
    expect(overallRetentionOfMixture([5, 0], [0.5, 0], [1], [0])).toBe(1);
  });

  it("refuses amounts that sum to 0, and unequal lengths", () => {
    expectRefusal("impossible input", "amounts sum to 0", () =>
      overallRetentionOfMixture([0, 0], [0.5, 0.5], [0.9], [0]),
    );
    expectRefusal("impossible input", "amounts has 2 values and recycled has 3.", () =>
      overallRetentionOfMixture([1, 2], [0.5, 0.5], [0.9, 0.9, 0.9], [0]),
    );
    expectRefusal("impossible input", "amounts has 3 values and degraded has 2.", () =>
      overallRetentionOfMixture([1, 2, 3], [0.5, 0.5, 0.5], [0.9], [0, 0]),
    );
  });
});
