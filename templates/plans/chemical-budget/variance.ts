import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { year } from "../harrow-fen/year";
import { down, heading, note, result } from "../parts/lines";
import { byMonth } from "./by-month";

/** A plus for what was spent above the standard. */
const signed = "+#,##0;-#,##0;0";

/** Keeps a mark off the number beside it. */
const aside = '"   "@';

const bridge = [
  heading("From the budget to what was spent"),
  result("budgeted", "Budget", "money", "#,##0", "INDEX({budgetYear},1,3)"),
  result(
    "priceVariance",
    "Price: paid more for a kilogram",
    "money",
    signed,
    "INDEX({varianceYear},1,1)",
  ),
  result(
    "usageVariance",
    "Usage: more kilograms for a tonne",
    "money",
    signed,
    "INDEX({varianceYear},1,2)",
  ),
  result(
    "activityVariance",
    "Activity: more tonnes made",
    "money",
    signed,
    "INDEX({varianceYear},1,3)",
  ),
  result("spentInAll", "Actual", "money", "#,##0", "SUMPRODUCT({actual.bought},{actual.price})"),
  result("overspent", "Over the budget", "money", signed, "INDEX({varianceYear},1,4)", {
    headline: true,
  }),
  result(
    "unexplained",
    "Not explained: must be nothing",
    "money",
    "0.00",
    "ROUND({spentInAll}-{budgeted}-{overspent},2)",
  ),
  note("Above nothing: more was spent. A: adverse, F: favourable; activity is neither.", 3),
];

export const varianceSheet: SheetPlan = {
  name: "Variance",
  widths: { A: 34, B: 13, C: 13, D: 13, E: 13, F: 10, G: 10 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Variance" },
    ...down("A3", bridge),
    {
      kind: "rule",
      on: "{unexplained}",
      when: { formula: "{cell}<>0" },
      look: "breach",
    },
    ...down("A14", [heading("Month by month")]),
    {
      kind: "spill",
      at: "A18",
      name: "varianceMonths",
      headers: ["Month"],
      formula: "{actual.month}",
      room: { rows: year.months.length, columns: 1 },
    },
    ...byMonth({
      at: "B18",
      name: "variance",
      headers: [
        "Price (money)",
        "Usage (money)",
        "Activity (money)",
        "Total (money)",
        "Price mark",
        "Usage mark",
      ],
      format: [signed, signed, signed, signed, aside, aside],
      formula:
        "WETEND.COST.VARIANCE({plan.price},{plan.dose}/(1-{loss}),{plan.output},{actual.price},{actual.bought},{actual.output})",
    }),
    ...[5, 6].flatMap((column): Part[] => [
      {
        kind: "rule",
        on: `{variance[${column}]}`,
        when: { formula: '{cell}="A"' },
        look: "warning",
      },
      { kind: "rule", on: `{variance[${column}]}`, when: { formula: '{cell}="F"' }, look: "good" },
    ]),
    {
      kind: "chart",
      at: "A32",
      width: 760,
      height: 340,
      chart: "stacked columns",
      title: "Why the starch cost more, or less, than the budget",
      alt: "A stacked column a month: what price, usage and activity added to the cost above the line, or took from it below. Usage is adverse in spring and in September, price from July on.",
      x: { title: "Month" },
      y: { title: "Over the budget (money)", format: "#,##0" },
      series: ["price", "usage", "activity"].map((name, index) => ({
        name,
        values: `{variance[${index + 1}]}`,
        x: "{varianceMonths}",
      })),
    },
  ],
};
