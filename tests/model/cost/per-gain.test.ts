import { expect, test } from "vitest";
import { costPerGain } from "../../../src/model/cost/per-gain";

test.each([
  ["an additive", 8, 0.6, 5, 0, 0.96],
  ["refining", 40, 0.1, 5, 0, 0.8],
  ["other cost as well", 8, 0.6, 5, 1.2, 1.2],
])("%s: by hand", (_, amount, price, increase, otherCost, expected) => {
  expect(costPerGain(amount, price, increase, otherCost)).toBeCloseTo(expected, 14);
});
