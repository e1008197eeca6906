import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { alternatives, starch } from "../harrow-fen/mill";
import {
  computedNote,
  down,
  fraction,
  heading,
  nameOf,
  note,
  number,
  result,
} from "../parts/lines";
import { parityPrice } from "./parity-price";
import { parityRange } from "./parity-range";

const inputs = [
  heading("This additive"),
  computedNote("{additive}"),
  number("price", "Price", "money/kg", starch.activePrice, "0.000", {
    from: 0.0001,
    to: 1000,
    help: "Per kilogram of dry active additive, delivered.",
  }),
  fraction("retention", "Overall retention", 0.834, {
    from: 0.001,
    help: "Share of the dose that stays in the sheet with the loop closed.",
  }),
  null,
  heading("The other one"),
  nameOf("otherAdditive", "Name", "native maize starch", "What the other additive is called."),
  number("otherPrice", "Price asked", "money/kg", alternatives.nativePrice, "0.000", {
    to: 1000,
    help: "Per kilogram of dry active additive, delivered.",
  }),
  fraction("otherRetention", "Overall retention", alternatives.nativeRetention, {
    from: 0.001,
    help: "10 to 20 % for native starch in the wet end (common practice, no source).",
  }),
  number("relativeEffect", "Effect of a kilogram kept", "of this one's", 1, "0.00", {
    from: 0.01,
    to: 100,
    help: "1 where a kilogram kept does the same; from a dose ladder.",
  }),
  number(
    "otherCodFactor",
    "Its chemical oxygen demand",
    "g/g",
    alternatives.nativeCodFactor,
    "0.00",
    {
      to: 8,
      help: "Measured on your own additive. 1.1 is typical of starch (1.0 to 1.18), 1.2 of polyacrylamide (0.9 to 1.35), from memory.",
      note: "Starch: 1.1, from memory.",
    },
  ),
];

const worth = (price: string, retention: string) =>
  parityPrice(price, "{retention}", retention, "{relativeEffect}");

const answer = [
  heading("Equal cost for equal effect"),
  result(
    "parityPrice",
    "The other one is worth up to",
    "money/kg",
    "0.000",
    worth("{price}", "{otherRetention}"),
    { headline: true },
  ),
  result(
    "overParity",
    "Price asked, above that",
    "money/kg",
    "+0.000;-0.000;0.000",
    "{otherPrice}-{parityPrice}",
  ),
  result(
    "verdict",
    "Cheaper for equal effect",
    "",
    "@",
    'IF({overParity}=0,"neither",IF({overParity}>0,"this additive","the other one"))',
  ),
  note(
    "With the effluent charge of the sheet Budget, and of this additive the oxygen demand there. Below 0, its losses alone cost more than it brings. Not advice to buy.",
    5,
  ),
];

const retentions = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
const factors = [0.8, 1, 1.25];

const grid: readonly Part[] = [
  {
    kind: "table",
    at: "A33",
    name: "steps",
    columns: [
      {
        key: "retention",
        header: "Its overall retention",
        unit: "fraction",
        values: retentions,
        format: "0 %",
        allow: { number: { from: 0.001, to: 1 } },
        help: "Retention of the other additive.",
      },
    ],
  },
  {
    kind: "block",
    at: "B32",
    name: "prices",
    look: "result",
    format: "0.000",
    rows: [factors.map((factor) => `={price}*${factor}`)],
  },
  {
    kind: "block",
    at: "B33",
    firstRow: "header",
    format: "0.000",
    rows: [factors.map(() => "Worth (money/kg)")],
  },
  {
    kind: "spill",
    at: "B34",
    name: "worth",
    formula: worth("{prices}", "{steps.retention}"),
    room: { rows: retentions.length, columns: factors.length },
    format: "0.000",
  },
  { kind: "rule", on: "{worth}", when: { below: "{otherPrice}" }, look: "warning" },
  {
    kind: "chart",
    at: "A46",
    width: 620,
    height: 320,
    chart: "curve",
    title: "What the other additive is worth, by its retention",
    alt: "Three rising lines: the price at which the other additive costs the same for equal effect, against its overall retention, for three prices of this additive; the price asked as a dashed line.",
    x: { title: "Overall retention of the other (%)", from: 0, to: 1, format: "0 %" },
    y: { title: "Worth (money/kg)", format: "0.0" },
    series: [
      { name: "this one a fifth cheaper", values: "{worth[1]}", x: "{steps.retention}" },
      { name: "this one as now", values: "{worth[2]}", x: "{steps.retention}" },
      { name: "this one a quarter dearer", values: "{worth[3]}", x: "{steps.retention}" },
      { name: "price asked", values: "{asked}", x: "{steps.retention}", role: "limit" },
    ],
  },
  {
    kind: "spill",
    at: "E34",
    name: "asked",
    headers: ["Asked (money/kg)"],
    formula: "{otherPrice}+0*{steps.retention}",
    room: { rows: retentions.length, columns: 1 },
    format: "0.000",
  },
];

export const paritySheet: SheetPlan = {
  name: "Parity",
  widths: { A: 38, B: 13, C: 20, D: 13, E: 13 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Price parity" },
    ...down("A3", inputs),
    ...down("A15", answer),
    ...parityRange("A21"),
    ...down("A32", [note("Price of this additive (money/kg):")]),
    ...grid,
  ],
};
