import type { Part, SheetPlan, TableColumnPlan } from "../../../src/workbook/plan";
import { starch } from "../harrow-fen/mill";
import { choice, down, heading, note } from "../parts/lines";

const measured = (
  key: string,
  header: string,
  values: readonly (number | null)[],
  to: number,
): TableColumnPlan => ({
  key,
  header,
  values,
  format: "0.000",
  allow: { number: { from: 0.000001, to } },
  help: "Your own measurement. Blank: the library's value stands.",
});

const ownTable: Part = {
  kind: "table",
  at: "A5",
  name: "own",
  columns: [
    {
      key: "name",
      header: "name",
      values: ["Cationic starch, DS 0.035", "Our second starch", null, null],
    },
    measured("density", "charge density [meq/g]", [null, 0.17, null, null], 20),
    measured("retention", "retention [fraction]", [0.82, 0.74, null, null], 1),
    measured("cod", "COD factor [g/g]", [starch.codFactor, 1.08, null, null], 8),
    measured("bod", "BOD factor [g/g]", [starch.bodFactor, null, null, null], 8),
    measured("solids", "solids [fraction]", [starch.solids, 0.87, null, null], 1),
  ],
};

const properties = [
  "charge density",
  "nitrogen",
  "retention",
  "COD factor",
  "BOD factor",
  "solids",
  "typical dose",
] as const;

const firstRow = 16;

/** One property a row: value, unit, low, high, evidence, source. */
const known = properties.flatMap((property, index): Part[] => [
  { kind: "block", at: `A${firstRow + index}`, look: "label", rows: [[property]] },
  {
    kind: "spill",
    at: `B${firstRow + index}`,
    name: `known${index + 1}`,
    formula: `IFNA(TRANSPOSE(INDEX(WETEND.LIBRARY.SOURCE({picked},"${property}",{own.all}),0,2)),"not known")`,
    room: { rows: 1, columns: 6 },
    format: ["0.000", '"  "@', "0.000", "0.000", '"  "@', "@"],
  },
]);

export const ownAdditiveSheet: SheetPlan = {
  name: "Own additive",
  widths: { A: 34, B: 26, C: 13, D: 13, E: 13, F: 24, G: 70, H: 3, I: 34 },
  print: { landscape: true },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Own additive" },
    ...down("A3", [
      heading("Your own measurements"),
      note("They go before the library's values, cell by cell. The two starches are invented."),
    ]),
    ownTable,
    ...down("A12", [
      heading("What is known of one"),
      choice(
        "picked",
        "Additive",
        "Cationic starch, DS 0.035",
        "{additives}",
        "Choose one from the list.",
      ),
    ]),
    {
      kind: "block",
      at: `A${firstRow - 1}`,
      firstRow: "header",
      format: ["@", "0", "@", "0", "0", "@", "@"],
      rows: [["Property", "Value", "Unit", "Low", "High", "Evidence", "Source"]],
    },
    ...known,
    ...down("I4", [heading("To choose from")]),
    {
      kind: "spill",
      at: "I5",
      name: "additives",
      formula: 'WETEND.LIBRARY.ADDITIVES("",{own.all})',
      room: { rows: 40, columns: 1 },
    },
  ],
};
