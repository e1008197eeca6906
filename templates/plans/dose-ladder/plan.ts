import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { ladderPlan } from "../harrow-fen/ladder";
import { down, fraction, heading, note, number, result, wholeNumber } from "../parts/lines";

const ladder = [
  heading("The ladder"),
  number("lowest", "Lowest dose", "kg/t", ladderPlan.lowest, "0.0", {
    from: 0.01,
    to: 100,
    help: "Above the blank, which is always there.",
  }),
  number("highest", "Highest dose", "kg/t", ladderPlan.highest, "0.0", {
    from: 0.02,
    to: 200,
    help: "Beyond the dose that you expect to use: a response cannot be read where it was not tried.",
  }),
  wholeNumber("steps", "Doses, the blank not counted", "", ladderPlan.steps, {
    to: 7,
    help: "Four to six suit a curve that levels off.",
  }),
  {
    kind: "input" as const,
    name: "spacing",
    label: "Spacing",
    unit: "",
    value: ladderPlan.spacing,
    allow: { oneOf: ["even", "ratio"] },
    help: "Ratio puts more doses where the curve is steep.",
  },
];

const size = [
  heading("How many batches"),
  fraction("variation", "Variation from batch to batch", ladderPlan.variation, {
    from: 0.0001,
    help: "Coefficient of variation at one dose, from earlier trials.",
  }),
  fraction("difference", "Difference not to be missed", ladderPlan.difference, {
    from: 0.0001,
    help: "Between a dose and the blank, of the mean.",
  }),
  fraction("power", "Chance to show it", 0.8, {
    from: 0.1,
    to: 0.9999,
    help: "0.8 is usual (common practice, no source).",
  }),
  fraction("alpha", "Chance of a false alarm", 0.05, {
    from: 0.0001,
    to: 0.5,
    help: "In the whole trial, two-sided.",
  }),
  result(
    "needed",
    "Batches needed of every level",
    "",
    "0",
    "WETEND.TRIAL.REPLICATES({variation},{difference},{power},{alpha},{steps})",
    { headline: true },
  ),
  wholeNumber("blocks", "Batches that will be made", "", ladderPlan.batches, {
    from: 2,
    to: 40,
    help: "One block each: a block holds every level once, made on one day from one stock.",
  }),
  wholeNumber("sheets", "Sheets of each batch", "", ladderPlan.sheets, {
    to: 20,
    help: "More sheets of a batch do not replace batches.",
  }),
  result("allSheets", "Sheets in all", "", "0", "({steps}+1)*{blocks}*{sheets}"),
  wholeNumber("seed", "Number that picks the order", "", ladderPlan.seed, {
    format: "0",
    from: 0,
    to: 4_294_967_295,
    help: "Leave it alone once the first batch is made: another number is another order.",
  }),
];

const differences = [0.04, 0.05, 0.06, 0.08, 0.1];
const variations = [0.015, 0.02, 0.025, 0.03];

const trade: readonly Part[] = [
  ...down("A25", [
    heading("Batches of every level, by what must not be missed"),
    note("Across: variation from batch to batch."),
  ]),
  {
    kind: "block",
    at: "B27",
    name: "variations",
    look: "input",
    format: "0.0 %",
    rows: [variations],
    allow: { number: { from: 0.0001, to: 1 } },
    help: "Coefficient of variation from batch to batch.",
  },
  {
    kind: "table",
    at: "A27",
    name: "differences",
    columns: [
      {
        key: "difference",
        header: "Difference",
        unit: "of the mean",
        values: differences,
        format: "0 %",
        allow: { number: { from: 0.0001, to: 1 } },
        help: "Difference between a dose and the blank, of the mean.",
      },
    ],
  },
  {
    kind: "spill",
    at: "B28",
    name: "tradeOff",
    formula:
      "WETEND.TRIAL.REPLICATES({variations},{differences.difference},{power},{alpha},{steps})",
    room: { rows: differences.length, columns: variations.length },
    format: "0",
  },
  { kind: "rule", on: "{tradeOff}", when: { formula: "{cell}<={blocks}" }, look: "good" },
];

export const planSheet: SheetPlan = {
  name: "Trial plan",
  widths: { A: 34, B: 11, C: 11, D: 11, E: 11, F: 3, G: 10, H: 3, I: 9, J: 9, K: 12 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Trial plan" },
    ...down("A3", ladder),
    ...down("A10", size),
    { kind: "rule", on: "{blocks}", when: { below: "{needed}" }, look: "warning" },
    ...trade,
    ...down("G3", [heading("Levels")]),
    {
      kind: "spill",
      at: "G5",
      name: "doses",
      headers: ["Dose (kg/t)"],
      formula: "ROUND(WETEND.TRIAL.LADDER({lowest},{highest},{steps},{spacing}),1)",
      room: { rows: 8, columns: 1 },
      format: "0.0",
    },
    ...down("I3", [heading("Run order")]),
    {
      kind: "spill",
      at: "I5",
      name: "order",
      headers: ["Block", "Run", "Dose (kg/t)"],
      formula: "DROP(WETEND.TRIAL.ORDER({doses},{blocks},{seed}),1)",
      room: { rows: 100, columns: 3 },
      format: ["0", "0", "0.0"],
    },
  ],
};
