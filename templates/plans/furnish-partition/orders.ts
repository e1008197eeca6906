import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { furnishTable, PARTITIONED, populationsTable } from "../harrow-fen/furnish";
import { mill, starch } from "../harrow-fen/mill";
import { joinsTable, orders, placesTable } from "../harrow-fen/orders";
import { down, fraction, heading, note, number, result } from "../parts/lines";

const walk = (key: string) =>
  `WETEND.PARTITION.ORDERED({dose},INDEX({joins.${key}},1),DROP({joins.${key}},1),{places.consistency},{furnish.share},{furnish.surface},{furnish.capacity},{furnish.halfLoad},{transfer})`;

const loop = [
  heading("Dose and loop"),
  number("dose", "Dose", "kg/t", starch.dose, "0.0", {
    from: 0.01,
    to: 100,
    help: "Dry starch per tonne of oven-dry furnish.",
  }),
  fraction("transfer", "Part that moves on to equilibrium", 0, {
    help: "0 for cationic starch, which hardly lets go; more for polymers that move between surfaces.",
  }),
  fraction("recycled", "Unretained part that returns", mill.recycled, {
    help: "Share of what passes the wire that comes back to the headbox.",
  }),
  fraction("degraded", "Of that, destroyed on the way", mill.degraded, {
    help: "Starch eaten or cut in the loop no longer bonds.",
  }),
];

const rows = orders.length;
const perPlace = ["On fibre (kg/t)", "On fines (kg/t)", "On filler (kg/t)", "Dissolved (kg/t)"];

/** A table of one order a row: its name, an amount for each place, and shares beside them. */
const byOrder = (
  row: number,
  names: string,
  amounts: readonly [name: string, formula: string],
  shares: readonly (readonly [name: string, header: string, formula: string])[],
): Part[] => [
  {
    kind: "spill",
    at: `A${row}`,
    name: names,
    headers: ["Order"],
    formula: "TRANSPOSE(DROP(TAKE({joins.all},1),,1))",
    room: { rows, columns: 1 },
  },
  {
    kind: "spill",
    at: `B${row}`,
    name: amounts[0],
    headers: perPlace,
    formula: amounts[1],
    room: { rows, columns: perPlace.length },
    format: "0.00",
  },
  ...shares.map(
    ([name, header, formula], index): Part => ({
      kind: "spill",
      at: `${"FG"[index]}${row}`,
      name,
      headers: [header],
      formula,
      room: { rows, columns: 1 },
      format: "0.0 %",
    }),
  ),
];

const answer = [
  heading("Does the order matter?"),
  result(
    "bestOrder",
    "Best order",
    "",
    "@",
    "INDEX({orderNames},MATCH({bestShare},{keptUseful},0))",
    {
      headline: true,
    },
  ),
  result(
    "bestShare",
    "Kept on fibre and fines by it",
    "of the dose",
    "0.0 %",
    "MAX({keptUseful})",
    {
      headline: true,
    },
  ),
  result("worstShare", "By the worst order", "of the dose", "0.0 %", "MIN({keptUseful})"),
  result(
    "sameDose",
    "Dose that keeps as much as the first",
    "kg/t, about",
    "0.0",
    "{dose}*INDEX({keptUseful},1)/{bestShare}",
  ),
  note(
    "Starch on fibre and fines bonds; starch on filler bonds little. Whether a place can be used, and what it does to formation and drainage, only a trial tells.",
    7,
  ),
];

export const ordersSheet: SheetPlan = {
  name: "Orders",
  widths: { A: 40, B: 13, C: 17, D: 13, E: 13, F: 14, G: 14 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Orders" },
    ...down("A3", [heading("The furnish")]),
    furnishTable("A4", PARTITIONED),
    {
      kind: "rule",
      on: "{furnish.share}",
      when: { formula: "ABS(SUM({furnish.share})-1)>0.005" },
      look: "breach",
    },
    ...down("A9", [heading("The stock line, in the direction of flow")]),
    placesTable("A10"),
    ...down("A15", [heading("Three orders of addition")]),
    joinsTable("A16", "starch"),
    ...down("F15", [heading("What stays in one pass")]),
    populationsTable("F16"),
    ...down("A22", loop),
    ...down("A28", [heading("Where the starch is in the stock")]),
    ...byOrder(
      30,
      "orderNames",
      ["split", `TRANSPOSE(HSTACK(${orders.map(({ key }) => walk(key)).join(",")}))`],
      [["useful", "On fibre and fines", "({split[1]}+{split[2]})/{dose}"]],
    ),
    ...down("A34", [heading("What stays in the sheet")]),
    ...byOrder(
      36,
      "keptNames",
      [
        "kept",
        "{split}*TRANSPOSE(WETEND.RETENTION.LOOP({populations.firstPass},{recycled},{degraded}))",
      ],
      [
        ["keptUseful", "On fibre and fines", "({kept[1]}+{kept[2]})/{dose}"],
        ["keptAll", "Overall retention", "({kept[1]}+{kept[2]}+{kept[3]}+{kept[4]})/{dose}"],
      ],
    ),
    ...down("A40", answer),
    {
      kind: "chart",
      at: "A47",
      width: 830,
      height: 340,
      chart: "stacked columns",
      title: "Where the dose goes, by order of addition",
      alt: "A stacked column for each of three orders of addition: starch on fibre, on fines, on filler, and still dissolved. Dosed before the filler joins, next to none of it is on the filler.",
      x: { title: "Order of addition" },
      y: { title: "Starch (kg/t)", from: 0, format: "0" },
      series: ["on fibre", "on fines", "on filler", "dissolved"].map((name, index) => ({
        name,
        values: `{split[${index + 1}]}`,
        x: "{orderNames}",
      })),
    },
  ],
};
