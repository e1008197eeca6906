import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { additiveRetention } from "../../../src/model/retention/additive";
import { expectRefusal, expectRelative } from "../expectations";

describe("additive retention", () => {
  it("is the amounts' mean of the components' retentions", () => {
    // 2·0.97 + 4·0.6 + 1·0.1 of 7.
    expectRelative(additiveRetention([2, 4], [0.97, 0.6], 1, 0.1), 4.44 / 7, 1e-12);
  });

  it("loses what is held on lost fines", () => {
    const onFibre = additiveRetention([6, 1], [0.97, 0.5], 0, 0);
    const onFines = additiveRetention([1, 6], [0.97, 0.5], 0, 0);
    expect(onFines).toBeLessThan(onFibre);
  });

  it("lies between the lowest and the highest retention, and does not depend on the order", () => {
    const share = fc.double({ min: 0.001, max: 1, noNaN: true });
    const component = fc.tuple(fc.double({ min: 0.001, max: 100, noNaN: true }), share);
    fc.assert(
      fc.property(fc.array(component, { minLength: 1, maxLength: 6 }), (components) => {
        const amounts = components.map(([amount]) => amount);
        const retentions = components.map(([, retention]) => retention);
        const retention = additiveRetention(amounts, retentions, 0, 0);
        expect(retention).toBeGreaterThanOrEqual(Math.min(...retentions) * (1 - 1e-12));
        expect(retention).toBeLessThanOrEqual(Math.max(...retentions) * (1 + 1e-12));
        const reversed = additiveRetention(amounts.toReversed(), retentions.toReversed(), 0, 0);
        expect(reversed).toBeCloseTo(retention, 12);
      }),
    );
  });

  it("refuses no additive at all, and unequal lengths", () => {
    expectRefusal("impossible input", "amounts sum to 0", () =>
      additiveRetention([0], [0.9], 0, 0),
    );
    expectRefusal("impossible input", "amounts has 2 values and retentions has 1.", () =>
      additiveRetention([1, 2], [0.9], 0, 0),
    );
  });
});
