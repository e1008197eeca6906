import type { Part, SheetPlan, TableColumnPlan } from "../../../src/workbook/plan";
import { additives } from "../harrow-fen/additives";
import { dissolvedFirstPass, furnishTable, ofFurnish } from "../harrow-fen/furnish";
import { effluent, mill } from "../harrow-fen/mill";
import { joinsTable, orders, placesTable } from "../harrow-fen/orders";
import { choice, down, fraction, heading, note, number } from "../parts/lines";

const furnish = furnishTable("A4", ["component", "share", "surface", "firstPass"]);

const loop = [
  heading("The loop, and what is lost"),
  fraction("dissolvedPass", "Dissolved part kept in a pass", dissolvedFirstPass, {
    help: "What little the water in the web carries along.",
  }),
  fraction("recycled", "Unretained part that returns", mill.recycled, {
    help: "Share of what passes the wire that comes back to the headbox.",
  }),
  fraction("degraded", "Of that, destroyed on the way", mill.degraded, {
    help: "What is eaten or cut in the loop no longer bonds, but is oxygen demand all the same.",
  }),
  number("treatmentPrice", "Effluent charge", "money/kg COD", effluent.treatmentPrice, "0.00", {
    to: 100,
    help: "For each kilogram of COD that leaves the mill.",
  }),
];

const line: readonly Part[] = [
  ...down("A16", [heading("The stock line, in the direction of flow")]),
  placesTable("A17"),
  ...down("E16", [heading("Orders of addition: where each joins")]),
  joinsTable("E17", "additive"),
  ...down("A23", [
    choice("order", "Order used", orders[0].title, "{orderNames}", "Choose one of the three."),
  ]),
  {
    kind: "spill",
    at: "F23",
    name: "positions",
    formula: "TRANSPOSE(INDEX({joins}[],0,1+MATCH({order},{orderNames},0)))",
    room: { rows: 1, columns: 4 },
    format: "0",
  },
  ...down("E23", [note("used:")]),
];

const columnOf = (
  key: "price" | "dose" | "most" | "codFactor" | "gain" | "scale",
  header: string,
  unit: string,
  format: string,
  to: number,
  help: string,
): TableColumnPlan => ({
  key,
  header,
  unit,
  values: additives.map((additive) => additive[key]),
  format,
  allow: { number: { from: 0, to } },
  help,
});

const blank = "Blank where the fit of the sheet Starch is to be used.";

const chemicals: readonly Part[] = [
  ...down("A25", [heading("Four additives")]),
  {
    kind: "table",
    at: "A26",
    name: "additives",
    columns: [
      { key: "name", header: "Additive", values: additives.map(({ name }) => name) },
      columnOf("price", "Price", "money/kg", "0.00", 100, "Per kilogram of dry active additive."),
      columnOf("dose", "Dose", "kg/t", "0.0", 100, "Dry active additive: the dose considered."),
      columnOf("most", "Highest tried", "kg/t", "0.0", 100, "No dose above this is proposed."),
      columnOf("codFactor", "COD", "g/g", "0.00", 8, "Measured on your own additive."),
      columnOf("gain", "Plateau gain", "N·m/g", "0.0", 100, blank),
      columnOf("scale", "Scale", "kg/t kept", "0.0", 100, blank),
    ],
  },
  ...down("A31", [
    note(
      "Gain and scale of the first come from the measured response on the sheet Starch; those of the others are assumed until they are measured.",
      8,
    ),
  ]),
  ...down("A33", [heading("What the components hold of each, from beaker tests")]),
  {
    kind: "table",
    at: "A34",
    name: "sites",
    columns: [
      { key: "component", header: "Component", values: ofFurnish("component") },
      ...additives.flatMap(({ key, name, capacities, halfLoads }): TableColumnPlan[] => [
        {
          key: `${key}Capacity`,
          header: `${name}, capacity`,
          unit: "mg/m²",
          values: capacities,
          format: "0.0",
          allow: { number: { from: 0.001, to: 100 } },
          help: "Additive that fills a square metre: from a beaker test.",
        },
        {
          key: `${key}HalfLoad`,
          header: `${name}, half load`,
          unit: "mg/L",
          values: halfLoads,
          format: "0",
          allow: { number: { from: 0.001, to: 10_000 } },
          help: "Dissolved additive at which half of the sites are filled.",
        },
      ]),
    ],
  },
];

export const stockSheet: SheetPlan = {
  name: "Stock",
  widths: { A: 38, B: 18, C: 16, D: 18, E: 15, F: 15, G: 15, H: 18, I: 18 },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Stock" },
    ...down("A3", [heading("The furnish")]),
    furnish,
    {
      kind: "rule",
      on: "{furnish.share}",
      when: { formula: "ABS(SUM({furnish.share})-1)>0.005" },
      look: "breach",
    },
    ...down("A9", loop),
    ...line,
    ...chemicals,
  ],
};
