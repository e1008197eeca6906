import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { down, heading, result } from "../parts/lines";

const month = [
  heading("The month"),
  result(
    "codLimit",
    "Permitted load, COD",
    "kg/d",
    "#,##0",
    'INDEX({permit.limit},MATCH("COD",{permit.substance},0))',
  ),
  result("highestCod", "Highest load", "kg/d COD", "#,##0", "MAX({allCod})"),
  result("daysAbove", "Days above the permit", "days", "0", 'COUNTIF({allCod},">"&{codLimit})', {
    headline: true,
  }),
  result(
    "daysShort",
    "Days with too little in the sheet",
    "days",
    "0",
    'COUNTIF({inSheet},"<"&0.95*{wanted})',
  ),
  result(
    "meanDose",
    "Mean dose, by tonnes",
    "kg/t",
    "0.00",
    "SUMPRODUCT({dosed},{dry})/SUM({dry})",
  ),
  result(
    "meanRetention",
    "Overall retention, by kilograms",
    "fraction",
    "0.0 %",
    "SUMPRODUCT({inSheet},{dry})/SUMPRODUCT({dosed},{dry})",
  ),
  result("monthOutput", "Oven-dry production", "t", "#,##0", "SUM({dry})"),
  result("monthStarch", "Starch used", "t", "0.0", "SUMPRODUCT({dosed},{dry})/1000"),
  result("monthLost", "Starch that left", "t", "0.0", "{monthStarch}*(1-{meanRetention})"),
  result("monthCost", "Cost of the starch", "money", "#,##0", "{monthStarch}*1000*{activePrice}"),
  result(
    "monthCharge",
    "Charge for its COD",
    "money",
    "#,##0",
    "SUM({starchCod})*{treatmentPrice}",
  ),
];

const load: Part = {
  kind: "chart",
  at: "E3",
  width: 800,
  height: 320,
  chart: "stacked columns",
  title: "COD of each day, against the permit",
  alt: "A stacked column a day: the load of all else, and on it the load that the starch brings, with the permitted load as a dashed line. The columns of the nineteenth, a day of overdosing, and of the twenty-fifth, a day of dirty furnish, reach above it.",
  x: { title: "Day", format: "d mmm" },
  y: { title: "COD (kg/d)", from: 0, format: "#,##0" },
  series: [
    { name: "all else", values: "{log.rest}", x: "{log.day}" },
    { name: "starch", values: "{starchCod}", x: "{log.day}" },
    { name: "permit", values: "{permitted}", x: "{log.day}", role: "limit" },
  ],
};

const dosing: Part = {
  kind: "chart",
  at: "E20",
  width: 800,
  height: 320,
  chart: "lines",
  title: "Starch dosed, allowed, and kept in the sheet",
  alt: "Three lines over thirty days: starch dosed, the largest dose that the permit allows on that day, and starch kept in the sheet. The dosed line crosses the allowed one on the nineteenth and on the twenty-fifth.",
  x: { title: "Day", format: "d mmm" },
  y: { title: "Starch (kg/t)", from: 0, format: "0" },
  series: [
    { name: "dosed", values: "{dosed}", x: "{log.day}" },
    { name: "kept in the sheet", values: "{inSheet}", x: "{log.day}" },
    { name: "allowed", values: "{allowed}", x: "{log.day}", role: "limit" },
  ],
};

export const thirtyDaysSheet: SheetPlan = {
  name: "Thirty days",
  widths: { A: 36, B: 11, C: 10, D: 3 },
  print: { landscape: true },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Thirty days" },
    ...down("A3", month),
    { kind: "rule", on: "{daysAbove}", when: { above: 0 }, look: "breach" },
    { kind: "rule", on: "{daysShort}", when: { above: 0 }, look: "warning" },
    load,
    dosing,
  ],
};
