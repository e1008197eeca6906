import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { down, note } from "../parts/lines";
import { spillColumns } from "../parts/spill-columns";

/** Of the histograms. */
export const bins = 20;

const rows = 1000;
const first = 5;

const sampleOf = (input: number) =>
  `WETEND.UNCERTAINTY.SAMPLE(INDEX({ranges.low},${input}),INDEX({ranges.likely},${input}),INDEX({ranges.high},${input}),{samples},{seed},"triangular",${input})`;

const column = spillColumns(first, rows);

const last = "INDEX({places.consistency},ROWS({places.consistency}))";
const dose = "INDEX({additives.dose},1)";

/** All at once at the last place; what the order that is used changes goes on top as a factor. */
const atOnce = (capacities: string) =>
  `WETEND.PARTITION.EQUILIBRIUM(${dose},${last},{furnish.share},{furnish.surface},${capacities},{sites.cationicHalfLoad})`;
const walked = (place: number) =>
  `INDEX({keptWhere},1,${place})/WETEND.RETENTION.LOOP(INDEX({furnish.firstPass},${place}),{recycled},{degraded})`;
const factor = (place: number) =>
  `${walked(place)}/INDEX(${atOnce("{sites.cationicCapacity}")},${place})`;

const loopOf = (firstPass: string) =>
  `WETEND.RETENTION.LOOP(${firstPass},{sampleRecycled},{sampleDegraded})`;

const inputs: readonly Part[] = [
  column("A", "sampleFines", "Fines, first pass", "0.000", sampleOf(1)),
  column("B", "sampleRecycled", "Returns", "0.000", sampleOf(2)),
  column("C", "sampleDegraded", "Destroyed", "0.000", sampleOf(3)),
  column("D", "sampleSites", "Sites, factor", "0.000", sampleOf(4)),
  column("E", "samplePrice", "Starch (money/kg)", "0.000", sampleOf(5)),
  column("F", "samplePower", "Power (money/kWh)", "0.000", sampleOf(6)),
  column("G", "sampleDrainage", "Drainage (money/t per °SR)", "0.000", sampleOf(7)),
  column(
    "H",
    "sampleCurve",
    ["Gain (N·m/g)", "Scale (kg/t kept)"],
    "0.00",
    "DROP(WETEND.STRENGTH.SAMPLE({labKept},{daysOut},{samples},{seed}),,1)",
  ),
  column(
    "J",
    "sampleRefiningCurve",
    ["Gain (N·m/g)", "Scale (kWh/t)"],
    "0.00",
    "DROP(WETEND.STRENGTH.SAMPLE({refined.energy},{refined.index},{samples},{seed}+1),,1)",
  ),
];

const results: readonly Part[] = [
  column(
    "M",
    "sampleUseful",
    "Kept on both (kg/t)",
    "0.00",
    `LET(held,${atOnce("{sampleSites}*TRANSPOSE({sites.cationicCapacity})")},INDEX(held,0,1)*${factor(1)}*${loopOf("INDEX({furnish.firstPass},1)")}+INDEX(held,0,2)*${factor(2)}*${loopOf("{sampleFines}")})`,
  ),
  column(
    "N",
    "sampleGain",
    "Gain (N·m/g)",
    "0.00",
    "WETEND.STRENGTH.RESPONSE({sampleUseful},0,{sampleCurve[1]},{sampleCurve[2]})",
  ),
  column(
    "O",
    "sampleRefiningGain",
    "Gain, refining (N·m/g)",
    "0.00",
    "WETEND.STRENGTH.RESPONSE({energy},0,{sampleRefiningCurve[1]},{sampleRefiningCurve[2]})",
  ),
  column(
    "P",
    "sampleCost",
    "Starch (money/t per N·m/g)",
    "0.00",
    `WETEND.COST.ADDITIVE(${dose},{samplePrice},{sampleGain},INDEX({charges},1))`,
  ),
  column(
    "Q",
    "sampleRefining",
    "Refining (money/t per N·m/g)",
    "0.00",
    "WETEND.COST.REFINING({energy},{samplePower},{sampleRefiningGain},{energy}*{drainageRise}*{sampleDrainage})",
  ),
  column(
    "R",
    "difference",
    "Starch less refining (money/t per N·m/g)",
    "0.00",
    "{sampleCost}-{sampleRefining}",
  ),
];

const widths = Object.fromEntries("ABCDEFGHIJKLMNOPQR".split("").map((letter) => [letter, 14]));

export const samplesSheet: SheetPlan = {
  name: "Samples",
  widths: { ...widths, K: 15, L: 3 },
  freeze: "A5",
  print: { landscape: true, pagesTall: 1, area: "A1:R54" },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Samples" },
    ...down("A2", [
      note(
        "A row is one mill that might be yours. Inputs first, then what follows from them: one formula a column. The first fifty are printed.",
      ),
    ]),
    ...inputs,
    ...results,
  ],
};
