import type { SheetPlan, SpillPart } from "../../../src/workbook/plan";
import { beaker } from "../harrow-fen/beaker";
import { furnishColumns } from "../harrow-fen/furnish";
import { down, heading, note } from "../parts/lines";

const room = { rows: 3, columns: 1 };
const column = (
  at: string,
  name: string,
  header: string,
  format: string,
  formula: string,
): SpillPart => ({ kind: "spill", at, name, headers: [header], formula, room, format });

export const beakerSheet: SheetPlan = {
  name: "Beaker",
  widths: { A: 22, B: 12, C: 12, D: 14, E: 12, F: 14, G: 14 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Beaker" },
    ...down("A3", [
      heading("A separated beaker test"),
      note(
        "A known dose is stirred into a known stock; then fibre, fines and filler are separated and the starch on each is measured.",
        7,
      ),
    ]),
    {
      kind: "table",
      at: "A5",
      name: "beaker",
      columns: [
        furnishColumns.component,
        {
          key: "share",
          header: "Share",
          unit: "fraction",
          values: beaker.shares,
          format: "0.00",
          allow: { number: { from: 0, to: 1 } },
          help: "Share of the dry stock in the beaker.",
        },
        furnishColumns.surface,
        {
          key: "found",
          header: "Starch found",
          unit: "mg/g stock",
          values: beaker.found,
          format: "0.0",
          allow: { number: { from: 0, to: 1000 } },
          help: "Starch found on this component, per gram of all the stock in the beaker.",
        },
      ],
    },
    column("E6", "foundShare", "Of what is held", "0.0 %", "{beaker.found}/SUM({beaker.found})"),
    column(
      "F6",
      "affinity",
      "Affinity per surface",
      "0.00",
      "WETEND.PARTITION.AFFINITY({beaker.found},{beaker.share},{beaker.surface})",
    ),
    ...down("A11", [
      heading("The same affinities on the mill's furnish"),
      note(
        "Affinities hold while sites are plenty. Beside them the sites themselves, which fill: both should tell much the same near the dose of the test.",
        7,
      ),
    ]),
    column("A14", "millPlaces", "Component", "@", "{furnish.component}"),
    column("B14", "millShare", "Share", "0.00", "{furnish.share}"),
    column(
      "C14",
      "byAffinity",
      "By affinity",
      "0.0 %",
      "WETEND.PARTITION.AREA({furnish.share},{furnish.surface},{affinity})",
    ),
    column(
      "D14",
      "bySites",
      "By sites",
      "0.0 %",
      "LET(held,TAKE(WETEND.PARTITION.EQUILIBRIUM({dose},INDEX({places.consistency},ROWS({places.consistency})),{furnish.share},{furnish.surface},{furnish.capacity},{furnish.halfLoad}),ROWS({furnish.share})),held/SUM(held))",
    ),
    {
      kind: "chart",
      at: "A19",
      width: 640,
      height: 300,
      chart: "columns",
      title: "Where the held starch sits, worked out in two ways",
      alt: "Two columns for each of fibre, fines and filler: the share of the held starch by the affinities of the beaker test, and by the sites of the furnish. The two nearly agree.",
      x: { title: "Component" },
      y: { title: "Share of the held starch (%)", from: 0, format: "0 %" },
      series: [
        { name: "by affinity", values: "{byAffinity}", x: "{millPlaces}" },
        { name: "by sites", values: "{bySites}", x: "{millPlaces}" },
      ],
    },
  ],
};
