import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { effluent } from "../harrow-fen/mill";
import { down, fraction, heading, number } from "../parts/lines";

const { background, limit } = effluent;
const most = { number: { from: 0, to: 1_000_000 } };
const room = { rows: 3, columns: 1 };

const inputs = [
  heading("The permit"),
  fraction("margin", "Part of the limits kept free", effluent.margin, {
    to: 0.99,
    help: "For the days that are not like the mean.",
  }),
  fraction("removal", "Removed by the mill's plant", 0, {
    to: 0.99,
    help: "0 where the limit holds for the raw effluent, as here.",
  }),
  number("effluentFlow", "Effluent flow", "m³/d", effluent.flow, "#,##0", {
    from: 1,
    to: 1_000_000,
    help: "Daily mean.",
  }),
];

const loads: readonly Part[] = [
  {
    kind: "table",
    at: "A9",
    name: "permit",
    columns: [
      { key: "substance", header: "Substance", values: ["COD", "BOD", "nitrogen"] },
      {
        key: "limit",
        header: "Limit",
        unit: "kg/d",
        values: [limit.cod, limit.bod, limit.nitrogen],
        format: "#,##0",
        allow: most,
        help: "Load that may leave in a day.",
      },
      {
        key: "rest",
        header: "All else, raw",
        unit: "kg/d",
        values: [background.cod, background.bod, background.nitrogen],
        format: "#,##0",
        allow: most,
        help: "Load with no starch dosed.",
      },
    ],
  },
  {
    kind: "block",
    at: "D9",
    look: "result",
    firstRow: "header",
    format: "0.0000",
    rows: [["Of starch (g/g)"], ["={codFactor}"], ["={bodFactor}"], ["={nitrogen}"]],
  },
  {
    kind: "block",
    at: "E9",
    look: "result",
    firstRow: "header",
    format: "#,##0.0",
    rows: [["This starch (kg/d)"]],
  },
  {
    kind: "block",
    at: "E10",
    name: "starchLoads",
    look: "result",
    format: "#,##0.0",
    rows: [
      ["=WETEND.EFFLUENT.COD({dose},{overallRetention},{production},{codFactor})"],
      ["=WETEND.EFFLUENT.BOD({dose},{overallRetention},{production},{bodFactor})"],
      ["=WETEND.EFFLUENT.NITROGEN({dose},{overallRetention},{production},{nitrogen})"],
    ],
  },
  {
    kind: "spill",
    at: "F10",
    name: "together",
    headers: ["Together (kg/d)"],
    formula: "{permit.rest}+{starchLoads}",
    room,
    format: "#,##0.0",
  },
  {
    kind: "spill",
    at: "G10",
    name: "ofLimit",
    headers: ["Of the limit"],
    formula: "{together}*(1-{removal})/{permit.limit}",
    room,
    format: "0.0 %",
  },
  { kind: "rule", on: "{ofLimit}", when: { above: 1 }, look: "breach" },
  { kind: "rule", on: "{ofLimit}", when: { above: "1-{margin}" }, look: "warning" },
  {
    kind: "spill",
    at: "H10",
    name: "concentrations",
    headers: ["Raw effluent (mg/L)"],
    formula: "WETEND.EFFLUENT.CONCENTRATION({together},{effluentFlow})",
    room,
    format: "#,##0.0",
  },
  {
    kind: "spill",
    at: "I10",
    name: "allowances",
    headers: ["Largest dose (kg/t)"],
    formula:
      "WETEND.EFFLUENT.ALLOWANCE({permit.limit},{permit.rest},{overallRetention},{production},VSTACK({codFactor},{bodFactor},{nitrogen}),{removal},{margin})",
    room,
    format: "0.0",
  },
  { kind: "rule", on: "{allowances}", when: { below: "{dose}" }, look: "breach" },
  { kind: "rule", on: "{allowances}", when: "error", look: "breach" },
];

/** Parts of the limit, for the chart: one scale for all three substances. */
const parts: readonly Part[] = [
  {
    kind: "spill",
    at: "K10",
    name: "restOfLimit",
    headers: ["All else, of the limit"],
    formula: "{permit.rest}*(1-{removal})/{permit.limit}",
    room,
    format: "0.0 %",
  },
  {
    kind: "spill",
    at: "L10",
    name: "starchOfLimit",
    headers: ["Starch, of the limit"],
    formula: "{ofLimit}-{restOfLimit}",
    room,
    format: "0.0 %",
  },
  {
    kind: "spill",
    at: "M10",
    name: "wholeLimit",
    headers: ["The limit"],
    formula: "{permit.limit}/{permit.limit}",
    room,
    format: "0 %",
  },
  {
    kind: "chart",
    at: "A15",
    width: 820,
    height: 300,
    chart: "stacked columns",
    title: "What leaves in a day, against the permit",
    alt: "Three stacked columns, for COD, BOD and nitrogen: the part of the limit that all else takes, and on it the part that this starch takes, with the limit as a dashed line at 100 %.",
    x: { title: "Substance" },
    y: { title: "Part of the limit (%)", from: 0, format: "0 %" },
    series: [
      { name: "all else", values: "{restOfLimit}", x: "{permit.substance}" },
      { name: "this starch", values: "{starchOfLimit}", x: "{permit.substance}" },
      { name: "limit", values: "{wholeLimit}", x: "{permit.substance}", role: "limit" },
    ],
  },
];

export const permitSheet: SheetPlan = {
  name: "Permit",
  widths: {
    A: 30,
    B: 14,
    C: 13,
    D: 11,
    E: 11,
    F: 11,
    G: 10,
    H: 12,
    I: 13,
    J: 3,
    K: 11,
    L: 11,
    M: 11,
  },
  print: { landscape: true },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Permit" },
    ...down("A3", inputs),
    ...down("A8", [heading("The loads of a day")]),
    ...loads,
    ...down("K8", [heading("For the chart")]),
    ...parts,
  ],
};
