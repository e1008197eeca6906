import type { Part, SheetPlan } from "../../../src/workbook/plan";
import {
  furnishArguments,
  furnishTable,
  PARTITIONED,
  populationsTable,
} from "../harrow-fen/furnish";
import { choice, down, heading, type Line, note, result } from "../parts/lines";
import { retentionAt } from "./retention";

/** The dose that leaves enough behind changes the retention that it is computed with: so step by step. */
const steps: readonly Line[] = [1, 2, 3, 4, 5].map((step) =>
  result(
    `step${step}`,
    step === 1 ? "Step 1, all of it kept" : `Step ${step}`,
    "kg/t",
    "0.0000",
    step === 1
      ? "WETEND.DOSE.TARGET({wanted},1)"
      : `WETEND.DOSE.TARGET({wanted},${retentionAt(`{step${step - 1}}`)})`,
  ),
);

const room = { rows: 4, columns: 1 };

const split: readonly Part[] = [
  {
    kind: "spill",
    at: "A18",
    name: "places",
    headers: ["Where it is"],
    formula: "{populations.place}",
    room,
  },
  {
    kind: "spill",
    at: "B18",
    name: "held",
    headers: ["Held (kg/t)"],
    formula: `WETEND.PARTITION.EQUILIBRIUM({dose},{consistency},${furnishArguments})`,
    room,
    format: "0.00",
  },
  {
    kind: "spill",
    at: "C18",
    name: "heldShare",
    headers: ["Of the dose"],
    formula: "{held}/{dose}",
    room,
    format: "0.0 %",
  },
  {
    kind: "spill",
    at: "D18",
    name: "loops",
    headers: ["Stays in the end"],
    formula: "WETEND.RETENTION.LOOP({populations.firstPass},{recycled},{degraded})",
    room,
    format: "0.0 %",
  },
  {
    kind: "spill",
    at: "E18",
    name: "kept",
    headers: ["Kept (kg/t)"],
    formula: "{held}*{loops}",
    room,
    format: "0.00",
  },
];

export const whereItGoesSheet: SheetPlan = {
  name: "Where it goes",
  widths: { A: 34, B: 13, C: 13, D: 13, E: 13 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Where it goes" },
    ...down("A3", [heading("The furnish, from a separated beaker test")]),
    furnishTable("A4", PARTITIONED),
    {
      kind: "rule",
      on: "{furnish.share}",
      when: { formula: "ABS(SUM({furnish.share})-1)>0.005" },
      look: "breach",
    },
    ...down("A9", [heading("What stays in one pass over the wire")]),
    populationsTable("A10"),
    ...down("A16", [heading("The dose in the stock, and in the sheet")]),
    ...split,
    ...down("A23", [
      heading("Closing in on the dose"),
      note(
        "Surfaces fill one after the other, so the retention changes with the dose. Each step takes the retention at the dose before it; where two steps agree, the dose is found.",
        5,
      ),
      ...steps,
    ]),
    ...down("A31", [
      heading("One population round the loop"),
      choice(
        "followed",
        "Population",
        "on fines",
        "{populations.place}",
        "Choose one of the four.",
      ),
    ]),
    {
      kind: "spill",
      at: "A34",
      name: "loop",
      headers: ["Of a steady dose", "Amount"],
      formula:
        "WETEND.RETENTION.BALANCE(INDEX({held},MATCH({followed},{populations.place},0)),INDEX({populations.firstPass},MATCH({followed},{populations.place},0)),{recycled},{degraded})",
      room: { rows: 5, columns: 2 },
      format: ["@", "0.00"],
    },
  ],
};
