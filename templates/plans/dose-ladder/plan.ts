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

/** Differences tried about the one that the root law gives, a twentieth of it apart. */
const finerSteps = 16;

const size = [
  heading("How many batches"),
  fraction("variation", "Variation from batch to batch", ladderPlan.variation, {
    from: 0.0001,
    help: "Coefficient of variation of the batch means at one dose, from earlier trials. That of single sheets is larger.",
  }),
  fraction("difference", "Difference that must not be missed", ladderPlan.difference, {
    from: 0.0001,
    help: "Between a dose and the blank, of the mean.",
  }),
  fraction("power", "Chance of showing it", 0.8, {
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
  result(
    "smallest",
    "Smallest difference they will show",
    "of the mean, about",
    "0 %",
    `IF({blocks}>={needed},{difference},LET(tried,{difference}*SQRT({needed}/{blocks})*(0.9+SEQUENCE(${finerSteps},1,0)/20),shown,IF(IFERROR(WETEND.TRIAL.REPLICATES({variation},tried,{power},{alpha},{steps})<={blocks},FALSE),tried),IF(COUNT(shown)=0,"beyond",MIN(shown))))`,
  ),
  result("allSheets", "Sheets in all", "", "0", "({steps}+1)*{blocks}*{sheets}"),
  wholeNumber("seed", "Seed of the random order", "", ladderPlan.seed, {
    format: "0",
    from: 0,
    to: 4_294_967_295,
    help: "Any whole number. Leave it alone once the first batch is made: another seed gives another order.",
  }),
];

const differences = [0.04, 0.05, 0.06, 0.08, 0.1];
const variations = [0.015, 0.02, 0.025, 0.03];

const trade: readonly Part[] = [
  ...down("A26", [
    heading("Batches needed of every level, by the difference"),
    note("Across: variation from batch to batch."),
  ]),
  {
    kind: "block",
    at: "B28",
    name: "variations",
    label: "Variation",
    look: "input",
    format: "0.0 %",
    rows: [variations],
    allow: { number: { from: 0.0001, to: 1 } },
    help: "Coefficient of variation from batch to batch.",
  },
  {
    kind: "table",
    at: "A28",
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
    at: "B29",
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
  widths: { A: 38, B: 11, C: 13, D: 11, E: 11, F: 3, G: 14, H: 3, I: 9, J: 9, K: 14 },
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
      room: { rows: 320, columns: 3 },
      format: ["0", "0", "0.0"],
    },
  ],
};
