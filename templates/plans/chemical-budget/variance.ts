import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { year } from "../harrow-fen/year";
import { computedNote, down, heading, note, result, sentence, wholeNumber } from "../parts/lines";
import { byMonth, MONTH } from "./by-month";
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
    "Budget of the months so far",
    "money",
    "#,##0",
    "SUM(TAKE({budget[3]},{monthsMade}))",
  ),
  result(
    "priceVariance",
    "Price: paid for a kilogram",
    "money",
    signed,
    "INDEX({varianceYear},1,1)",
  ),
  result(
    "usageVariance",
    "Usage: kilograms for a tonne",
    "money",
    signed,
    "INDEX({varianceYear},1,2)",
  ),
  result("activityVariance", "Activity: tonnes made", "money", signed, "INDEX({varianceYear},1,3)"),
  result(
    "spentInAll",
    "Actual cost",
    "money",
    "#,##0",
    `SUM(${actualToDate.bought}*${actualToDate.price})`,
  ),
  result("overspent", "Above the budget", "money", signed, "INDEX({varianceYear},1,4)", {
    headline: true,
  }),
  result(
    "overShare",
    "Above the budget",
    "of the budget",
    "+0.0 %;-0.0 %;0.0 %",
    "{overspent}/{budgeted}",
  ),
  result(
    "unexplained",
    "Left unexplained (must be 0)",
    "money",
    "0.00",
    "ROUND(ABS({spentInAll}-{budgeted}-{overspent}),2)",
  ),
  note(
    "Above 0, more was spent than budgeted. A: adverse, F: favourable. Activity is neither: more paper takes more additive.",
    6,
  ),
];

/** What the months from one to another sum to in a column with a row a month. */
const inSpan = (column: string) =>
  `LET(month,SEQUENCE(ROWS(${column})),SUM(IF((month>={firstMonth})*(month<={lastMonth}),${column})))`;

const spanBudget = inSpan("TAKE({budget[3]},{monthsMade})");

/** A span that holds no month that is over has nothing to explain, and says so. */
const spanInWords = (words: string) =>
  `IF({firstMonth}>{lastMonth},"The first month comes after the last.",IF({firstMonth}>{monthsMade},"None of these months is over yet.",${words}&IF({lastMonth}>{monthsMade}," Months that are not over are left out.","")))`;

/** Says in a sentence what the numbers above it say; FIXED writes numbers as the machine's language has them. */
function inWords(over: string, budget: string, parts: readonly [string, string, string]): string {
  const [price, usage, activity] = parts.map((part) => `way*${part}`);
  return [
    `LET(over,${over},base,${budget},way,IF(over<0,-1,1)`,
    `most,MAX(${price},${usage},${activity})`,
    `cause,IF(${price}=most,"the price",IF(${usage}=most,"usage","activity"))`,
    'share,IF(base>0," ("&FIXED(100*ABS(over)/base,1)&" %)","")',
    `IF(ROUND(over,2)=0,"As much was spent as budgeted.",FIXED(ABS(over),0)&IF(over>0," more"," less")&" was spent than the "&FIXED(base,0)&" budgeted"&share&", mostly because of "&cause&"."))`,
  ].join(",");
}

/** Paper without additive is no favour: a use that was not written down, or a dose that failed. */
const NONE_USED = "none used";

const marked = (variances: string) =>
  `LET(all,${variances},IF(ISERROR(all),all,IF((all="F")*VSTACK(0,(${actualToDate.output}>0)*(${actualToDate.bought}=0),0),"${NONE_USED}",all)))`;

/** The month of a number that is typed, beside it. */
const monthOf = (at: string, month: string): Part => ({
  kind: "block",
  at,
  look: "result",
  format: MONTH,
  rows: [[`=INDEX({actual.month},{${month}})`]],
});

const span = [
  heading("A quarter, or any span of months"),
  wholeNumber("firstMonth", "From month number", "", thirdQuarter.first, {
    help: "Counted from the first month of the table: 7 where the third quarter begins.",
  }),
  wholeNumber("lastMonth", "to month number", "", thirdQuarter.last, {
    help: "The last month that counts: 9 where the third quarter ends.",
  }),
  result("spanPrice", "Price", "money", signed, inSpan("{variance[1]}")),
  result("spanUsage", "Usage", "money", signed, inSpan("{variance[2]}")),
  result("spanActivity", "Activity", "money", signed, inSpan("{variance[3]}")),
  result("spanOver", "Above the budget", "money", signed, inSpan("{variance[4]}"), {
    headline: true,
  }),
  result(
    "spanShare",
    "Above the budget",
    "of the budget",
    "+0.0 %;-0.0 %;0.0 %",
    `LET(base,${spanBudget},IF(base=0,"",{spanOver}/base))`,
  ),
];

export const varianceSheet: SheetPlan = {
  name: "Variance",
  widths: { A: 36, B: 13, C: 13, D: 13, E: 13, F: 10, G: 12 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Variance" },
    ...down("A2", [computedNote("{additive}"), ...bridge]),
    {
      kind: "rule",
      on: "{unexplained}",
      when: { formula: "{cell}<>0" },
      look: "breach",
    },
    ...down("A13", [
      sentence(
        inWords("{overspent}", "{budgeted}", [
          "{priceVariance}",
          "{usageVariance}",
          "{activityVariance}",
        ]),
      ),
    ]),
    ...down("A15", span),
    monthOf("C16", "firstMonth"),
    monthOf("C17", "lastMonth"),
    ...down("A23", [
      sentence(
        spanInWords(
          inWords("{spanOver}", spanBudget, ["{spanPrice}", "{spanUsage}", "{spanActivity}"]),
        ),
      ),
    ]),
    ...down("A25", [heading("Month by month")]),
    {
      kind: "spill",
      at: "A28",
      name: "varianceMonths",
      headers: ["Month"],
      formula: actualToDate.month,
      room: { rows: year.months.length, columns: 1 },
      format: MONTH,
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
      formula: marked(
        `WETEND.COST.VARIANCE(${planToDate.price},${planToDate.dose}/(1-{loss}),${planToDate.output},${actualToDate.price},${actualToDate.bought},${actualToDate.output})`,
      ),
    }),
    ...[5, 6].flatMap((column): Part[] => [
      {
        kind: "rule",
        on: `{variance[${column}]}`,
        when: { formula: `OR({cell}="A",{cell}="${NONE_USED}")` },
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
      title: "Why the additive cost more, or less, than the budget",
      alt: "A stacked column a month: what price, usage and activity added to the cost above the line, or took from it below. Usage is adverse in spring and in September, price from July on.",
      x: { title: "Month" },
      y: { title: "Above the budget (money)", format: "#,##0" },
      series: ["price", "usage", "activity"].map((name, index) => ({
        name,
        values: `{variance[${index + 1}]}`,
        x: "{varianceMonths}",
      })),
    },
  ],
};
