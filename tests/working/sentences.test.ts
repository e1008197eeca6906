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
  [
    "PARTITION.AREA",
    [
      [0.6, 0.4],
      [1, 2],
    ],
    "Of the additive 42.9 % go to component 1, 57.1 % go to component 2.",
  ],
  [
    "PARTITION.AFFINITY",
    [
      [1, 2, 1],
      [0.5, 0.5, 1],
      [1, 1, 1],
    ],
    "As strong as that of component 1, for the same surface, is the pull of component 2 2 times, component 3 0.5 times.",
  ],
  [
    "PARTITION.EQUILIBRIUM",
    [10, 0.5, [1], [1], [20], [10_000]],
    "Once settled, component 1 holds 5.86 kg/t; 4.14 kg/t stay dissolved, 41.4 % of the dose.",
  ],
  [
    "RETENTION.BALANCE",
    [10, 0.5, 0.5, 0],
    "Of 10 kg/t dosed 6.67 kg/t stay in the sheet, 66.7 %; 3.33 kg/t go to the sewer and 0 kg/t are degraded.",
  ],
  [
    "TRIAL.HANDSHEET",
    [10, 0.003, 0.01, 60, 0.02, 1],
    "A batch takes 1.2 g of fibre, 400 mL of stock, and 12 mg of additive in 1.2 mL of solution.",
  ],
  ["TRIAL.MAKEDOWN", [2, 0.01, 0.88, 1, 1], "22.7 g of product into 1,977 g of water."],
  ["TRIAL.LADDER", [2, 16, 4, "ratio", false], "4 doses from 2 to 16 kg/t."],
  [
    "TRIAL.COMPARE",
    [
      ["blank", "blank", "blank", "a", "a", "a", "b", "b", "b", "c", "c", "c"],
      [55, 47, 48, 55, 64, 64, 55, 49, 52, 50, 44, 41],
      undefined,
      undefined,
      undefined,
      0.05,
    ],
    "Shown to differ from blank: a by 11 (0.751 to 21.2).",
  ],
  [
    "STRENGTH.FIT",
    [[0, 0, 2, 2, 4, 4], [39, 41, 44, 46, 49, 51], "straight", undefined, undefined, undefined],
    "Of the shape “straight”: a base of 40 N·m/g and a gain of 2.5 N·m/g per kg/t (limits of 95 %: 1.65 to 3.35).",
  ],
  [
    "LIBRARY.COMPONENTS",
    [null],
    "12 names: Bleached kraft fibre, refined, Mechanical-pulp fibre, Recycled fibre, Primary fines, and 8 more.",
  ],
])("the answer of %s is told in a sentence", (id, values, says) => {
  expect(tellWorking(id, values)?.says).toBe(says);
});

test.each([
  [0, undefined, "What leaves with the water is taken to cost nothing."],
  [0.2, undefined, "A kilogram lost is taken to cost the same of both."],
  [0, 0.3, "What leaves of this additive is taken to cost nothing."],
  [0.2, 0, "What leaves of the other is taken to cost nothing."],
])(
  "of a loss price of %d, and %d of the other, COST.PARITY remarks what it takes for granted",
  (loss, otherLoss, remark) => {
    const remarks = tellWorking("COST.PARITY", [0.5, 0.2, 0.8, loss, 1, otherLoss])?.remarks;
    expect(remarks?.at(-1)).toBe(remark);
  },
);
