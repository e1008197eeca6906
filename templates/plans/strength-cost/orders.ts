import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { orders } from "../harrow-fen/orders";
import { down, heading, note, result } from "../parts/lines";
import { spillColumns } from "../parts/spill-columns";
import { loops, walk } from "./chain";

const first = 5;
const rows = orders.length;
const dose = "INDEX({additives.dose},1)";
const price = "INDEX({additives.price},1)";

const column = spillColumns(first, rows);

const byOrder = orders
  .map(({ key }) => walk("cationic", dose, `INDEX({joins.${key}},1)`, `DROP({joins.${key}},1)`))
  .join(",");

const kept = (place: number) => `INDEX({orderKept},0,${place})`;

const outcome: readonly Part[] = [
  column("A", "orderNames", "Order", "@", "TRANSPOSE(DROP(TAKE({joins.all},1),,1))"),
  {
    kind: "spill",
    at: `B${first}`,
    name: "orderKept",
    headers: ["On fibre (kg/t)", "On fines (kg/t)", "On filler (kg/t)", "Dissolved (kg/t)"],
    formula: `TRANSPOSE(HSTACK(${byOrder}))*TRANSPOSE(${loops})`,
    room: { rows, columns: 4 },
    format: "0.00",
  },
  column("F", "orderUseful", "On fibre and fines (kg/t)", "0.00", `${kept(1)}+${kept(2)}`),
  column(
    "G",
    "orderGain",
    "Gain (N·m/g)",
    "0.00",
    "WETEND.STRENGTH.RESPONSE({orderUseful},0,{starchGain},{starchScale})",
  ),
  column(
    "H",
    "orderCost",
    "Cost (money/t per N·m/g)",
    "0.00",
    `WETEND.COST.ADDITIVE(${dose},${price},{orderGain},WETEND.COST.EFFLUENT(${dose},(${kept(1)}+${kept(2)}+${kept(3)}+${kept(4)})/${dose},{treatmentPrice},INDEX({additives.codFactor},1)))`,
  ),
  column(
    "I",
    "orderDose",
    "Dose for the gain of the first (kg/t)",
    "0.0",
    `WETEND.STRENGTH.DOSEFOR(INDEX({orderGain},1),0,{starchGain},{starchScale}*${dose}/{orderUseful})`,
  ),
  column(
    "J",
    "orderRefining",
    "Refining (money/t per N·m/g)",
    "0.00",
    "{refiningUnitCost}+0*{orderGain}",
  ),
];

export const ordersSheet: SheetPlan = {
  name: "Order",
  widths: { A: 38, B: 13, C: 13, D: 13, E: 13, F: 15, G: 14, H: 15, I: 17, J: 15 },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Order" },
    ...down("A3", [
      heading("The same dose of cationic starch, dosed elsewhere: what stays in the sheet"),
    ]),
    ...outcome,
    ...down("A9", [
      heading("What the place is worth"),
      result(
        "cheapestOrder",
        "Cheapest order",
        "",
        "@",
        "INDEX({orderNames},MATCH(MIN({orderCost}),{orderCost},0))",
        { headline: true },
      ),
      result(
        "orderSaving",
        "Starch saved by it for the same gain",
        "money/t",
        "0.00",
        `(INDEX({orderDose},1)-MIN({orderDose}))*${price}`,
        { headline: true },
      ),
      note(
        "By the share kept at this dose. Whether the place can be used, and what it does to formation and drainage, only a trial tells.",
        10,
      ),
    ]),
    {
      kind: "chart",
      at: "A15",
      width: 900,
      height: 340,
      chart: "columns",
      title: "Cost of a unit of strength by cationic starch, by order of addition",
      alt: "A column for each of three orders of addition: the cost of each N·m/g by cationic starch, falling as more of it ends on fibre and fines, with the cost by refining as a dashed line.",
      x: { title: "Order of addition" },
      y: { title: "Cost (money/t per N·m/g)", from: 0, format: "0.0" },
      series: [
        { name: "cationic starch", values: "{orderCost}", x: "{orderNames}" },
        { name: "refining", values: "{orderRefining}", x: "{orderNames}", role: "limit" },
      ],
    },
  ],
};
