import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { effluent, starch } from "../harrow-fen/mill";
import { purchaseLoss, year } from "../harrow-fen/year";
import { down, fraction, heading, nameOf, number } from "../parts/lines";
import { byMonth, MONTH } from "./by-month";

const inputs = [
  heading("For the whole year"),
  nameOf("additive", "Additive", starch.name, "Its name, as every sheet shows it."),
  fraction("loss", "Lost before the machine", purchaseLoss, {
    to: 0.5,
    help: "Share of what is bought that is never dosed: bags, spills, cooks thrown away.",
  }),
  fraction("plannedRetention", "Overall retention", 0.834, {
    from: 0.001,
    help: "Share of the dose that stays in the sheet with the loop closed.",
  }),
  number("codFactor", "Its chemical oxygen demand", "g/g", starch.codFactor, "0.00", {
    to: 8,
    help: "Measured on your own additive. 1.1 is typical of starch, from memory.",
  }),
  number("treatmentPrice", "Effluent charge", "money/kg COD", effluent.treatmentPrice, "0.00", {
    to: 100,
    help: "What the works asks for each kilogram of COD that leaves the mill, or what treating it costs.",
  }),
];

const plan: Part = {
  kind: "table",
  at: "A12",
  name: "plan",
  columns: [
    { key: "month", header: "Month", values: year.months, format: MONTH },
    {
      key: "output",
      header: "Dry output",
      unit: "t",
      values: year.budget.output,
      format: "#,##0",
      allow: { number: { from: 0, to: 1_000_000 } },
      help: "Oven-dry furnish to be made in the month.",
    },
    {
      key: "dose",
      header: "Dose",
      unit: "kg/t",
      values: year.budget.dose,
      format: "0.00",
      allow: { number: { from: 0, to: 100 } },
      help: "Dry active additive per tonne of oven-dry furnish.",
    },
    {
      key: "price",
      header: "Price",
      unit: "money/kg",
      values: year.budget.price,
      format: "0.000",
      allow: { number: { from: 0.0001, to: 1000 } },
      help: "Per kilogram of dry active additive, delivered.",
    },
  ],
};

export const budgetSheet: SheetPlan = {
  name: "Budget",
  widths: { A: 34, B: 13, C: 14, D: 13, E: 7, F: 12, G: 13, H: 14, I: 12, J: 14 },
  freeze: "B13",
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Budget" },
    ...down("A3", inputs),
    ...down("A11", [heading("Month by month")]),
    plan,
    ...byMonth({
      at: "F13",
      name: "budget",
      headers: [
        "Output (t)",
        "Additive (kg)",
        "Cost (money)",
        "Cost (money/t)",
        "Cumulative (money)",
      ],
      format: ["#,##0", "#,##0", "#,##0", "0.00", "#,##0"],
      formula: "WETEND.COST.BUDGET({plan.output},{plan.dose},{plan.price},{loss},{plan.month})",
    }),
  ],
};
