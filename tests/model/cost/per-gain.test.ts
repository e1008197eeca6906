import { expect, test } from "vitest";
import { costPerGain } from "../../../src/model/cost/per-gain";
import { Refusal } from "../../../src/model/refusal";

test.each([
  ["an additive", 8, 0.6, 5, 0, 0.96],
  ["refining", 40, 0.1, 5, 0, 0.8],
  ["other cost as well", 8, 0.6, 5, 1.2, 1.2],
])("%s: by hand", (_, amount, price, increase, otherCost, expected) => {
  expect(costPerGain(amount, price, increase, otherCost)).toBeCloseTo(expected, 14);
});

test.each([0, -1])("an increase of %d has no cost per N·m/g gained", (increase) => {
  expect(() => costPerGain(8, 0.6, increase, 0)).toThrow(Refusal);
});
