import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { additives } from "../harrow-fen/additives";
import { down, heading, note, number, result } from "../parts/lines";
import { spillColumns } from "../parts/spill-columns";

const options = additives.length + 1;
const first = 11;
const answerRow = 20;
const points = 13;
const steps = 8;
const curves = 34;

const wishes = [
  heading("What is wanted, and what may be used up"),
  number("target", "Gain of tensile index", "N·m/g", 6, "0.0", {
    from: 0.01,
    to: 100,
    help: "Over today's sheet, by all options together.",
  }),
  number("drainageRoom", "Drainage that may be lost", "°SR", 1.5, "0.0", {
    to: 60,
    help: "Before the machine has to slow down.",
  }),
  number("codRoom", "COD that may be added", "kg/t", 1.6, "0.00", {
    to: 1000,
    help: "What the permit leaves for the additives, per tonne of oven-dry furnish.",
  }),
];

const column = spillColumns(first, options);

const table: readonly Part[] = [
  column("A", "mixOptions", "Option", "@", "{optionNames}"),
  column("B", "mixGains", "Plateau gain (N·m/g)", "0.0", "VSTACK({gains},{refiningGain})"),
  column("C", "mixScales", "Scale (kg/t, kWh/t)", "0.0", "VSTACK({doseScales},{refiningScale})"),
  column(
    "D",
    "mixPrices",
    "Full price (money/kg, /kWh)",
    "0.000",
    "VSTACK({fullPrices},{fullPowerPrice})",
  ),
  column("E", "mixMost", "At most (kg/t, kWh/t)", "0.0", "VSTACK({additives.most},{mostEnergy})"),
  {
    kind: "spill",
    at: `F${first}`,
    name: "sideUse",
    headers: ["Drainage (°SR each)", "COD (kg each)"],
    formula:
      "HSTACK(VSTACK(0*{additives.dose},{drainageRise}),VSTACK((1-{overall})*{additives.codFactor},0))",
    room: { rows: options, columns: 2 },
    format: ["0.000", "0.00"],
  },
];

const mix = (target: string) =>
  `WETEND.COST.MIX(${target},{mixGains},{mixScales},{mixPrices},{mixMost},"exponential",{sideUse},HSTACK({drainageRoom},{codRoom}))`;
const total = options + 2;

const answer: readonly Part[] = [
  {
    kind: "spill",
    at: `A${answerRow}`,
    name: "mixNames",
    headers: ["Option"],
    formula: "{optionNames}",
    room: { rows: options, columns: 1 },
  },
  {
    kind: "spill",
    at: `B${answerRow}`,
    name: "mixture",
    headers: [
      "Amount (kg/t, kWh/t)",
      "Share of the gain",
      "Cost (money/t)",
      "Next unit (money/t per N·m/g)",
    ],
    formula: `DROP(TAKE(${mix("{target}")},${options + 1}),1,1)`,
    room: { rows: options, columns: 4 },
    format: ["0.0", "0 %", "0.00", "0.00"],
  },
  { kind: "rule", on: "{mixture[1]}", when: { above: 0 }, look: "good" },
  ...down(`A${answerRow + options + 1}`, [
    result(
      "mixCost",
      "Cost of the mix",
      "money/t",
      "0.00",
      `INDEX(${mix("{target}")},${total},4)`,
      {
        headline: true,
      },
    ),
    result(
      "mixNext",
      "Cost of the next N·m/g",
      "money/t",
      "0.00",
      `INDEX(${mix("{target}")},${total},5)`,
    ),
    result("binding", "Limits that bind", "", "@", `INDEX(${mix("{target}")},${total + 1},2)`, {
      note: "side limit 1: drainage, side limit 2: COD",
    }),
    result(
      "mixSaving",
      "Saved against one option alone",
      "money/t",
      "0.00",
      `INDEX(${mix("{target}")},${total + 2},2)`,
    ),
    result("single", "Which is", "", "@", `INDEX(${mix("{target}")},${total + 2},3)`, {
      note: "counted from the top of the table",
    }),
    note(
      "Gains are taken as additive. Treatments that compete for the same bonds give less together: confirm the mix by a trial.",
      7,
    ),
  ]),
];

/** What each option costs alone, up to its most, and what the mix costs, for the chart. */
const against: readonly Part[] = [
  ...down(`I${first - 2}`, [heading("For the chart")]),
  {
    kind: "spill",
    at: `I${first}`,
    name: "curveGains",
    headers: ["1, gain", "2, gain", "3, gain", "4, gain", "5, gain"],
    formula: `WETEND.STRENGTH.RESPONSE(SEQUENCE(${points},1,0,1/${points - 1})*TRANSPOSE({mixMost}),0,TRANSPOSE({mixGains}),TRANSPOSE({mixScales}))`,
    room: { rows: points, columns: options },
    format: "0.00",
  },
  {
    kind: "spill",
    at: `N${first}`,
    name: "curveCosts",
    headers: ["1, cost", "2, cost", "3, cost", "4, cost", "5, cost"],
    formula: `SEQUENCE(${points},1,0,1/${points - 1})*TRANSPOSE({mixMost}*{mixPrices})`,
    room: { rows: points, columns: options },
    format: "0.00",
  },
  {
    kind: "spill",
    at: `I${first + points + 2}`,
    name: "mixTargets",
    headers: ["Mix, gain"],
    formula: `SEQUENCE(${steps})*{target}/${steps}`,
    room: { rows: steps, columns: 1 },
    format: "0.00",
  },
  {
    kind: "block",
    at: `J${first + points + 1}`,
    firstRow: "header",
    format: "0",
    rows: [["Mix, cost"]],
  },
  {
    kind: "block",
    at: `J${first + points + 2}`,
    name: "mixCosts",
    look: "result",
    format: "0.00",
    rows: Array.from({ length: steps }, (_, step) => [
      `=INDEX(${mix(`{mixTargets[${step + 1},1]}`)},${total},4)`,
    ]),
  },
  {
    kind: "chart",
    at: `A${curves}`,
    width: 860,
    height: 380,
    chart: "curve",
    title: "Cost against gain: each option alone, and the cheapest mix",
    alt: "A rising curve for each of four additives and for refining: what it costs to gain so much strength by it alone; below them all the curve of the cheapest mix, up to the gain that is wanted.",
    x: { title: "Gain of tensile index (N·m/g)", from: 0, format: "0" },
    y: { title: "Cost (money/t)", from: 0, format: "0" },
    series: [
      ...[...additives.map(({ name }) => name), "refining"].map((name, index) => ({
        name,
        values: `{curveCosts[${index + 1}]}`,
        x: `{curveGains[${index + 1}]}`,
      })),
      { name: "the cheapest mix", values: "{mixCosts}", x: "{mixTargets}", role: "measured" },
    ],
  },
];

export const mixSheet: SheetPlan = {
  name: "Mix",
  widths: { A: 34, B: 15, C: 15, D: 17, E: 16, F: 14, G: 12, H: 3 },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Mix" },
    ...down("A3", wishes),
    ...down(`A${first - 2}`, [heading("The options, on the amount that is added")]),
    ...table,
    ...down(`A${answerRow - 2}`, [heading("The cheapest mix")]),
    ...answer,
    ...against,
  ],
};
