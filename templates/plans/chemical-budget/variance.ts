import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { year } from "../harrow-fen/year";
import { down, heading, note, result, wholeNumber } from "../parts/lines";
import { byMonth } from "./by-month";
import { actualToDate, planToDate } from "./to-date";

/** A plus for what was spent above the standard. */
const signed = "+#,##0;-#,##0;0";

/** Months counted from the first of the year. */
const thirdQuarter = { first: 7, last: 9 };

/** Keeps a mark off the number beside it. */
const aside = '"   "@';

const bridge = [
  heading("From the budget to what was spent"),
  result(
    "budgeted",
    "Budget of the months over",
    "money",
    "#,##0",
    "SUM(TAKE({budget[3]},{monthsMade}))",
  ),
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
  result(
    "spentInAll",
    "Actual",
    "money",
    "#,##0",
    `SUM(${actualToDate.bought}*${actualToDate.price})`,
  ),
  result("overspent", "Over the budget", "money", signed, "INDEX({varianceYear},1,4)", {
    headline: true,
  }),
  result(
    "overShare",
    "Over the budget",
    "of the budget",
    "+0.0 %;-0.0 %;0.0 %",
    "{overspent}/{budgeted}",
  ),
  result(
    "unexplained",
    "Not explained: must be nothing",
    "money",
    "0.00",
    "ROUND(ABS({spentInAll}-{budgeted}-{overspent}),2)",
  ),
  note("Above nothing: more was spent. A: adverse, F: favourable; activity is neither.", 6),
];

/** What the months from one to another sum to in a column with a row a month. */
const inSpan = (column: string) =>
  `LET(month,SEQUENCE(ROWS(${column})),SUM(IF((month>={firstMonth})*(month<={lastMonth}),${column})))`;

const span = [
  heading("A quarter, or any months"),
  wholeNumber("firstMonth", "From month", "", thirdQuarter.first, {
    help: "Counted from the top of the table: 7 where the third quarter begins.",
  }),
  wholeNumber("lastMonth", "to month", "", thirdQuarter.last, {
    help: "The last month that counts: 9 where the third quarter ends.",
  }),
  result("spanPrice", "Price", "money", signed, inSpan("{variance[1]}")),
  result("spanUsage", "Usage", "money", signed, inSpan("{variance[2]}")),
  result("spanActivity", "Activity", "money", signed, inSpan("{variance[3]}")),
  result("spanOver", "Over the budget", "money", signed, inSpan("{variance[4]}"), {
    headline: true,
  }),
  result(
    "spanShare",
    "Over the budget",
    "of the budget",
    "+0.0 %;-0.0 %;0.0 %",
    `{spanOver}/${inSpan("TAKE({budget[3]},{monthsMade})")}`,
  ),
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
    ...down("A15", span),
    ...down("A24", [heading("Month by month")]),
    {
      kind: "spill",
      at: "A28",
      name: "varianceMonths",
      headers: ["Month"],
      formula: actualToDate.month,
      room: { rows: year.months.length, columns: 1 },
    },
    ...byMonth({
      at: "B28",
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
      formula: `WETEND.COST.VARIANCE(${planToDate.price},${planToDate.dose}/(1-{loss}),${planToDate.output},${actualToDate.price},${actualToDate.bought},${actualToDate.output})`,
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
      at: "A42",
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
