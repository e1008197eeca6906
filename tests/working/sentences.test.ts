import { expect, test } from "vitest";
import { tellWorking } from "../../src/working";

test.each([
  [
    "COST.BUDGET",
    [[9000, 1000], [8, 8], [0.78, 0.78], undefined, undefined],
    "62,400.00 money in all, 6.24 money/t, for 10,000 t and 80,000 kg bought.",
  ],
  [
    "COST.VARIANCE",
    [[0.6], [8], [10000], [0.64], [90300], [10500]],
    "9,792.00 money above the plan: price 3,612.00, usage 3,780.00, activity 2,400.00.",
  ],
  [
    "COST.VARIANCE",
    [[0.6], [8], [10000], [0.6], [70000], [10000]],
    "6,000.00 money below the plan: price 0.00, usage −6,000.00, activity 0.00.",
  ],
  [
    "UNCERTAINTY.DRIVERS",
    [
      [1, 2, 3, 4, 5, 6],
      [
        [1, 3, 2, 4, 6, 5],
        [5, 1, 4, 6, 2, 3],
      ],
      ["dose", "solids"],
    ],
    "Of the spread dose explains 78.4 %, solids explains 2.04 %.",
  ],
])("the answer of %s is told in a sentence", (id, values, says) => {
  expect(tellWorking(id, values)?.says).toBe(says);
});
