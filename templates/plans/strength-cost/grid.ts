import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { starch } from "../harrow-fen/mill";
import { down, heading, note, number } from "../parts/lines";

const prices = [0.6, 0.7, starch.activePrice, 0.9, 1];
const shares = [0.4, 0.5, 0.6, 0.67, 0.75, 0.85, 0.95];
const dose = "INDEX({additives.dose},1)";

const grid: readonly Part[] = [
  {
    kind: "table",
    at: "A6",
    name: "shares",
    columns: [
      {
        key: "share",
        header: "Kept on fibre and fines",
        unit: "of the dose",
        values: shares,
        format: "0 %",
        allow: { number: { from: 0.01, to: 1 } },
        help: "Share of the dose that ends on fibre and fines in the sheet.",
      },
    ],
  },
  {
    kind: "block",
    at: "B6",
    name: "prices",
    label: "Price of starch",
    look: "input",
    format: "0.00",
    rows: [prices],
    allow: { number: { from: 0.0001, to: 100 } },
    help: "Price of dry active cationic starch (money/kg).",
  },
  {
    kind: "spill",
    at: "B7",
    name: "priceGrid",
    formula: `WETEND.COST.ADDITIVE(${dose},{prices},WETEND.STRENGTH.RESPONSE(${dose}*{shares.share},0,{starchGain},{starchScale}))`,
    room: { rows: shares.length, columns: prices.length },
    format: "0.00",
  },
  { kind: "rule", on: "{priceGrid}", when: { below: "{refiningUnitCost}" }, look: "good" },
  {
    kind: "spill",
    at: "G7",
    name: "gridRefining",
    headers: ["Refining"],
    formula: "{refiningUnitCost}+0*{shares.share}",
    room: { rows: shares.length, columns: 1 },
    format: "0.00",
  },
  {
    kind: "chart",
    at: "A16",
    width: 760,
    height: 320,
    chart: "curve",
    title: "What a unit of strength by starch costs, by what is kept",
    alt: "Three falling curves: the cost of each N·m/g by cationic starch against the share that is kept on fibre and fines, for the lowest, the middle and the highest price; the cost by refining as a dashed line.",
    x: { title: "Kept on fibre and fines (%)", from: 0.3, to: 1, format: "0 %" },
    y: { title: "Cost (money/t per N·m/g)", from: 0, format: "0.0" },
    series: [
      { name: "lowest price", values: "{priceGrid[1]}", x: "{shares.share}" },
      { name: "middle price", values: "{priceGrid[3]}", x: "{shares.share}" },
      { name: "highest price", values: "{priceGrid[5]}", x: "{shares.share}" },
      { name: "refining", values: "{gridRefining}", x: "{shares.share}", role: "limit" },
    ],
  },
];

const lighter: readonly Part[] = [
  ...down("A34", [
    heading("The same strength in a lighter sheet"),
    number("required", "Tensile strength required", "kN/m", 4, "0.00", {
      from: 0.01,
      to: 100,
      help: "Along or across, as it is sold; the index must be of the same direction.",
    }),
    number("fibrePrice", "Price of the furnish", "money/t", 210, "0", {
      from: 0.01,
      to: 10_000,
      help: "Per tonne of oven-dry furnish.",
    }),
  ]),
  {
    kind: "spill",
    at: "A38",
    name: "lighter",
    headers: ["With the cationic starch", "Amount"],
    formula:
      "WETEND.COST.GRAMMAGE({required},{starchBase},{starchBase}+INDEX({increases},1),{fibrePrice},INDEX({spending},1))",
    room: { rows: 5, columns: 2 },
    format: ["@", "0.00"],
  },
  ...down("A44", [
    note("Strength gained is turned into less fibre; the last line says what is not checked.", 7),
  ]),
];

export const gridSheet: SheetPlan = {
  name: "Price and retention",
  widths: { A: 42, B: 12, C: 14, D: 12, E: 12, F: 12, G: 12 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Price and retention" },
    ...down("A3", [
      heading("Cost of a unit of strength by cationic starch"),
      note(
        "Money per tonne for each N·m/g, charge left out. Across: price (money/kg). Marked where it is below that of refining.",
        7,
      ),
    ]),
    ...grid,
    ...lighter,
  ],
};
