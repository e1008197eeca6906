import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { furnish } from "../harrow-fen/furnish";
import { alternatives, mill, starch } from "../harrow-fen/mill";
import { down, heading, note, result, wholeNumber } from "../parts/lines";
import { bins } from "./samples";

const [, fines] = furnish;

/** What is known within a range: low, likely, high. */
const ranges = [
  ["first-pass retention of fines", "fraction", 0.55, fines.firstPass, 0.72],
  ["unretained part that returns", "fraction", 0.88, mill.recycled, 0.95],
  ["of that, destroyed", "fraction", 0.15, mill.degraded, 0.4],
  ["capacity of the sites, against the test", "factor", 0.8, 1, 1.25],
  ["price of starch", "money/kg", 0.74, starch.activePrice, 0.84],
  ["price of power", "money/kWh", 0.09, alternatives.powerPrice, 0.14],
  ["cost of slower drainage", "money/t per °SR", 0.1, alternatives.drainageCost, 0.6],
] as const;

const allow = { number: { from: 0, to: 1000 } };

const table: Part = {
  kind: "table",
  at: "A4",
  name: "ranges",
  columns: [
    { key: "what", header: "Known within a range", values: ranges.map(([what]) => what) },
    { key: "unit", header: "Unit", values: ranges.map(([, unit]) => unit) },
    {
      key: "low",
      header: "Low",
      values: ranges.map(([, , low]) => low),
      format: "0.00",
      allow,
      help: "The lowest value you hold possible.",
    },
    {
      key: "likely",
      header: "Likely",
      values: ranges.map(([, , , likely]) => likely),
      format: "0.00",
      allow,
      help: "The most likely value.",
    },
    {
      key: "high",
      header: "High",
      values: ranges.map(([, , , , high]) => high),
      format: "0.00",
      allow,
      help: "The highest value you hold possible.",
    },
  ],
};

const sampling = [
  wholeNumber("samples", "Samples", "", 1000, {
    from: 20,
    to: 1000,
    help: "The sheet Samples has room for a thousand.",
  }),
  wholeNumber("seed", "Seed", "", 7, {
    from: 0,
    to: 4_294_967_295,
    format: "0",
    help: "Any number; the same one gives the same samples on every machine.",
  }),
];

const answer = [
  heading("How sure is it?"),
  result(
    "refiningCheaper",
    "Chance that refining is cheaper",
    "of the samples",
    "0 %",
    "SUM(--({difference}>0))/{samples}",
    { headline: true },
  ),
  note("Average cost of a unit of strength, each at the amount considered.", 5),
];

const summary: readonly Part[] = [
  {
    kind: "spill",
    at: "A22",
    name: "starchSummary",
    headers: ["Cost (money/t per N·m/g)", "By starch"],
    formula: "TAKE(WETEND.UNCERTAINTY.SUMMARY({sampleCost}),5)",
    room: { rows: 5, columns: 2 },
    format: ["@", "0.00"],
  },
  {
    kind: "spill",
    at: "C22",
    name: "refiningSummary",
    headers: ["By refining"],
    formula: "DROP(TAKE(WETEND.UNCERTAINTY.SUMMARY({sampleRefining}),5),,1)",
    room: { rows: 5, columns: 1 },
    format: "0.00",
  },
];

export const uncertaintySheet: SheetPlan = {
  name: "Uncertainty",
  widths: { A: 38, B: 18, C: 14, D: 14, E: 14, F: 3, G: 28, H: 12, I: 12 },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Uncertainty" },
    ...down("A3", [heading("What is uncertain")]),
    table,
    ...down("A13", sampling),
    ...down("A16", answer),
    ...summary,
    ...down("A28", [heading("What drives the difference between the two")]),
    {
      kind: "spill",
      at: "A30",
      name: "drivers",
      headers: ["Input", "Rank correlation", "Share of the spread"],
      formula:
        'DROP(WETEND.UNCERTAINTY.DRIVERS({difference},HSTACK({sampleFines},{sampleRecycled},{sampleDegraded},{sampleSites},{samplePrice},{samplePower},{sampleDrainage},WETEND.STRENGTH.RESPONSE(INDEX({useful},1),0,{sampleCurve[1]},{sampleCurve[2]}),{sampleRefiningGain}),VSTACK({ranges.what},"response to starch","response to refining")),1)',
      room: { rows: ranges.length + 2, columns: 3 },
      format: ["@", "0.00", "0 %"],
    },
    {
      kind: "chart",
      at: "A41",
      width: 690,
      height: 320,
      chart: "bars",
      title: "What drives the difference",
      alt: "A bar for each uncertain input, the longest first: its share of the spread of the difference between starch and refining.",
      x: { title: "Input" },
      y: { title: "Share of the spread (%)", from: 0, format: "0 %" },
      series: [{ name: "share of the spread", values: "{drivers[3]}", x: "{drivers[1]}" }],
    },
    ...down("G3", [heading("How the costs spread")]),
    {
      kind: "spill",
      at: "G5",
      name: "edges",
      headers: ["Up to (money/t per N·m/g)"],
      formula: `LET(low,MIN({sampleCost},{sampleRefining}),high,MAX({sampleCost},{sampleRefining}),low+SEQUENCE(${bins})*(high-low)/${bins})`,
      room: { rows: bins, columns: 1 },
      format: "0.00",
    },
    ...(["Cost", "Refining"] as const).map(
      (of, index): Part => ({
        kind: "spill",
        at: `${"HI"[index]}5`,
        name: `frequency${of}`,
        headers: [index === 0 ? "Starch" : "Refining"],
        formula: `TAKE(FREQUENCY({sample${of}},{edges}),${bins})/{samples}`,
        room: { rows: bins, columns: 1 },
        format: "0.0 %",
      }),
    ),
    {
      kind: "chart",
      at: "G29",
      width: 640,
      height: 340,
      chart: "columns",
      title: "Cost of a unit of strength, a thousand times",
      alt: "Two histograms over the cost of a unit of strength: that by refining, and that by starch, with how much they overlap.",
      x: { title: "Up to (money/t per N·m/g)", format: "0.0" },
      y: { title: "Of the samples (%)", from: 0, format: "0 %" },
      series: [
        { name: "starch", values: "{frequencyCost}", x: "{edges}" },
        { name: "refining", values: "{frequencyRefining}", x: "{edges}" },
      ],
    },
  ],
};
