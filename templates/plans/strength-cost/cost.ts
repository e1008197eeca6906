import type { Part, SheetPlan, SpillPart } from "../../../src/workbook/plan";
import { additives } from "../harrow-fen/additives";
import { down, heading, note, result } from "../parts/lines";
import { loops, walks } from "./chain";

const perUnit = "money/t per N·m/g";
const kept = 5;
const costs = 14;
const count = additives.length;

const spill = (
  at: string,
  name: string,
  header: string,
  format: string,
  formula: string,
  rows: number,
): SpillPart => ({
  kind: "spill",
  at,
  name,
  headers: [header],
  formula,
  room: { rows, columns: 1 },
  format,
});

/** Where each additive is in the end, and what its response looks like on the dose that is added. */
const chain: readonly Part[] = [
  spill(`A${kept}`, "additiveNames", "Additive", "@", "{additives.name}", count),
  {
    kind: "spill",
    at: `B${kept}`,
    name: "keptWhere",
    headers: ["On fibre (kg/t)", "On fines (kg/t)", "On filler (kg/t)", "Dissolved (kg/t)"],
    formula: `${walks}*TRANSPOSE(${loops})`,
    room: { rows: count, columns: 4 },
    format: "0.00",
  },
  spill(
    `F${kept}`,
    "useful",
    "On fibre and fines (kg/t)",
    "0.00",
    "{keptWhere[1]}+{keptWhere[2]}",
    count,
  ),
  spill(`G${kept}`, "usefulShare", "Of the dose", "0.0 %", "{useful}/{additives.dose}", count),
  spill(
    `H${kept}`,
    "overall",
    "Overall retention",
    "0.0 %",
    "({keptWhere[1]}+{keptWhere[2]}+{keptWhere[3]}+{keptWhere[4]})/{additives.dose}",
    count,
  ),
  spill(
    `I${kept}`,
    "gains",
    "Plateau gain (N·m/g)",
    "0.0",
    'IF({additives.gain}="",{starchGain},{additives.gain})',
    count,
  ),
  spill(
    `J${kept}`,
    "scales",
    "Scale (kg/t kept)",
    "0.0",
    'IF({additives.scale}="",{starchScale},{additives.scale})',
    count,
  ),
  spill(`K${kept}`, "doseScales", "Scale (kg/t added)", "0.0", "{scales}/{usefulShare}", count),
  spill(
    `L${kept}`,
    "fullPrices",
    "Price and charge (money/kg)",
    "0.00",
    "{additives.price}+(1-{overall})*{additives.codFactor}*{treatmentPrice}",
    count,
  ),
];

const withRefining = (ofAdditives: string, ofRefining: string) =>
  `VSTACK(${ofAdditives},${ofRefining})`;

const unitCosts: readonly Part[] = [
  spill(
    `A${costs}`,
    "optionNames",
    "Option",
    "@",
    withRefining("{additives.name}", '"refining"'),
    count + 1,
  ),
  spill(
    `B${costs}`,
    "amounts",
    "Amount",
    "0.0",
    withRefining("{additives.dose}", "{energy}"),
    count + 1,
  ),
  spill(
    `C${costs}`,
    "units",
    "Unit",
    '"  "@',
    withRefining('IF({additives.dose}>0,"kg/t")', '"kWh/t"'),
    count + 1,
  ),
  spill(
    `D${costs}`,
    "increases",
    "Gain (N·m/g)",
    "0.00",
    withRefining(
      "WETEND.STRENGTH.RESPONSE({useful},0,{gains},{scales})",
      "WETEND.STRENGTH.RESPONSE({energy},0,{refiningGain},{refiningScale})",
    ),
    count + 1,
  ),
  spill(
    `E${costs}`,
    "charges",
    "Other cost (money/t)",
    "0.00",
    withRefining(
      "WETEND.COST.EFFLUENT({additives.dose},{overall},{treatmentPrice},{additives.codFactor})",
      "{energy}*{drainageRise}*{drainageCost}",
    ),
    count + 1,
  ),
  spill(
    `F${costs}`,
    "spending",
    "Total cost (money/t)",
    "0.00",
    `${withRefining("{additives.dose}*{additives.price}", "{energy}*{powerPrice}")}+{charges}`,
    count + 1,
  ),
  spill(
    `G${costs}`,
    "averages",
    "Average (money/t per N·m/g)",
    "0.00",
    withRefining(
      `WETEND.COST.ADDITIVE({additives.dose},{additives.price},TAKE({increases},${count}),TAKE({charges},${count}))`,
      `WETEND.COST.REFINING({energy},{powerPrice},INDEX({increases},${count + 1}),INDEX({charges},${count + 1}))`,
    ),
    count + 1,
  ),
  spill(
    `H${costs}`,
    "marginals",
    "Next unit (money/t per N·m/g)",
    "0.00",
    withRefining(
      "WETEND.COST.MARGINAL({additives.dose},{fullPrices},{gains},{doseScales})",
      "WETEND.COST.MARGINAL({energy},{fullPowerPrice},{refiningGain},{refiningScale})",
    ),
    count + 1,
  ),
  {
    kind: "rule",
    on: "{averages}",
    when: { formula: "{cell}=MIN({averages})" },
    look: "good",
  },
];

export const costSheet: SheetPlan = {
  name: "Cost",
  widths: {
    A: 28,
    B: 12,
    C: 12,
    D: 14,
    E: 13,
    F: 16,
    G: 18,
    H: 18,
    I: 14,
    J: 13,
    K: 13,
    L: 18,
  },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Cost" },
    ...down("A3", [heading("What is kept of each, with the order used")]),
    ...chain,
    ...down("A10", [
      note(
        "The response is read on what is kept on fibre and fines, so the order of addition and the retention change the answer. The scale on the dose that is added takes the share kept at the dose of the sheet Stock.",
        12,
      ),
    ]),
    ...down("A12", [heading("What a unit of strength costs")]),
    ...unitCosts,
    ...down("A20", [
      result("starchUnitCost", "Cationic starch", perUnit, "0.00", "INDEX({averages},1)", {
        headline: true,
      }),
      result("refiningUnitCost", "Refining", perUnit, "0.00", "TAKE({averages},-1)", {
        headline: true,
      }),
    ]),
    {
      kind: "chart",
      at: "A24",
      width: 900,
      height: 340,
      chart: "columns",
      title: "Cost of a unit of strength: on average, and of the next",
      alt: "Two columns for each of four additives and for refining: the cost of each N·m/g gained on average, and the cost of the next one, which is higher for all. Native starch, of which little stays, is by far the dearest.",
      x: { title: "Option" },
      y: { title: "Cost (money/t per N·m/g)", from: 0, format: "0" },
      series: [
        { name: "on average", values: "{averages}", x: "{optionNames}" },
        { name: "next unit", values: "{marginals}", x: "{optionNames}" },
      ],
    },
  ],
};
