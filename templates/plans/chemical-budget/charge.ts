import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { year } from "../harrow-fen/year";
import { computedNote, down, heading, note, result } from "../parts/lines";
import { spillColumns } from "../parts/spill-columns";
import { MONTH } from "./by-month";
import { actualToDate, planToDate } from "./to-date";

const firstRow = 12;

const monthly = spillColumns(firstRow, year.months.length);

const perTonne = (dose: string, retention: string) =>
  `WETEND.COST.EFFLUENT(${dose},${retention},{treatmentPrice},{codFactor})`;

const months: readonly Part[] = [
  monthly("A", "chargeMonths", "Month", MONTH, actualToDate.month),
  monthly(
    "B",
    "plannedPerTonne",
    "Planned (money/t)",
    "0.000",
    perTonne(planToDate.dose, "{plannedRetention}"),
  ),
  monthly(
    "C",
    "actualPerTonne",
    "Actual (money/t)",
    "0.000",
    perTonne("{dosed}", actualToDate.retention),
  ),
  monthly(
    "D",
    "plannedCharge",
    "Planned (money)",
    "#,##0",
    `{plannedPerTonne}*${planToDate.output}`,
  ),
  monthly(
    "E",
    "actualCharge",
    "Actual (money)",
    "#,##0",
    `{actualPerTonne}*${actualToDate.output}`,
  ),
  monthly(
    "F",
    "overCharge",
    "Above plan (money)",
    "+#,##0;-#,##0;0",
    "{actualCharge}-{plannedCharge}",
  ),
  {
    kind: "rule",
    on: "{overCharge}",
    when: { above: "0.05*INDEX({plannedCharge},1)" },
    look: "warning",
  },
];

export const chargeSheet: SheetPlan = {
  name: "Effluent charge",
  widths: { A: 40, B: 13, C: 13, D: 13, E: 13, F: 13 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Effluent charge" },
    ...down("A2", [
      computedNote("{additive}"),
      heading("What the additive that is not retained costs as well"),
      result(
        "chargeForYear",
        "Charge for its COD so far",
        "money",
        "#,##0",
        "SUM({actualCharge})",
        {
          headline: true,
        },
      ),
      result("chargePlanned", "Planned for these months", "money", "#,##0", "SUM({plannedCharge})"),
      result(
        "fullCost",
        "Additive and charge, per tonne",
        "money/t",
        "0.00",
        "({spentInAll}+{chargeForYear})/SUM({actual.output})",
      ),
      note(
        "Not in the budget of the additive, as it is paid to the works. What is lost before the machine is not charged here.",
        6,
      ),
    ]),
    ...down("A10", [heading("Month by month")]),
    ...months,
    {
      kind: "chart",
      at: "A26",
      width: 720,
      height: 320,
      chart: "columns",
      title: "Effluent charge for the additive",
      alt: "Two columns a month: the planned charge and the actual one. The actual charge is highest above plan in April, May and September.",
      x: { title: "Month" },
      y: { title: "Charge (money)", from: 0, format: "#,##0" },
      series: [
        { name: "planned", values: "{plannedCharge}", x: "{chargeMonths}" },
        { name: "actual", values: "{actualCharge}", x: "{chargeMonths}" },
      ],
    },
  ],
};
