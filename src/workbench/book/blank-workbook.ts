import type { Plan } from "../../workbook/plan";

/** To begin with nothing: one sheet, for formulas of one's own. */
export const blankWorkbook: Plan = {
  id: "workbook",
  title: "Blank workbook",
  question: "One empty sheet, for formulas of your own.",
  sheets: [{ name: "Sheet1", gridlines: true, parts: [] }],
};
