import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { comparisonSheet } from "./comparison";
import { fitSheet } from "./fit";
import { makeUpSheet } from "./make-up";
import { millRunSheet } from "./mill-run";
import { planSheet } from "./plan";
import { resultsSheet } from "./results";

const question = "How do I prove what it does?";

export const doseLadder: Plan = {
  id: "dose-ladder",
  title: "Dose ladder",
  question,
  sheets: [
    aboutSheet({
      name: "About the ladder",
      title: "Dose ladder",
      question,
      answers: [
        ["Batches needed of every level", "{needed}", "", "0"],
        ["Lowest dose shown to differ", "{lowestShown}", "kg/t", "0.0"],
        ["Dose for the gain that is wanted", "{doseFor}", "kg/t, laboratory", "0.0"],
        ["at least, 95 %", "{doseLow}", "kg/t", "0.0"],
        ["at most, 95 %", "{doseHigh}", "kg/t", "0.0"],
        ["Wait after each step on the machine", "{wait}", "h", "0.0"],
      ],
      typing: [
        ["Trial plan", "The ladder, what must not be missed, and how many batches will be made."],
        ["Make-up", "Solution, stock and sheet former. It gives the volumes for the bench."],
        ["Results", "One row a sheet. Paste over the rows of the table; add or delete rows of it."],
        [
          "Comparison",
          "Nothing: every dose against the blank, with limits that allow for all of them.",
        ],
        ["Fit", "The gain that is wanted, and the shape of the curve."],
        ["Mill run", "The machine, and the doses of the run, step by step."],
      ],
      notCovered:
        "The unit is the batch: sheets of one batch tell nothing of how batches differ. Laboratory sheets are made without a closed loop: what the machine keeps is for the workbooks dose-and-effluent and strength-cost. One property is judged; look at the others, too. Once the first batch is made, plan and order stay as they are.",
      cautions: [
        "Starch dust can explode, cooked starch scalds, spills are slippery, and chests are confined spaces. The sheets Make-up and Mill run say more.",
      ],
    }),
    planSheet,
    makeUpSheet,
    resultsSheet,
    comparisonSheet,
    fitSheet,
    millRunSheet,
  ],
};
