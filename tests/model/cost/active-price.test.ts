import { expect, test } from "vitest";
import { activePrice } from "../../../src/model/cost/active-price";

test.each([
  // By hand: 0.45 + 0.05 for 0.25·0.8 = 0.2 kg of active.
  [0.45, 0.25, 0.8, 0.05, 2.5],
  [0.6, 1, 1, 0, 0.6],
])(
  "a price of %d at solids %d, active %d and freight %d is %d per kg of dry active",
  (price, solids, active, freight, expected) => {
    expect(activePrice(price, solids, active, freight)).toBeCloseTo(expected, 14);
  },
);
