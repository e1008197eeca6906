import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { benchSheet } from "./bench";
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
        ["Its lower limit, 95 %", "{doseLow}", "kg/t", "0.0"],
        ["Its upper limit, 95 %", "{doseHigh}", "kg/t", "0.0"],
        ["Wait after each step of the mill run", "{wait}", "h", "0.0"],
      ],
      typing: [
        ["Trial plan", "The ladder, what must not be missed, and how many batches will be made."],
        ["Make-up", "Solution, stock and sheet former. It gives the volumes for the bench."],
        ["Bench sheet", "Nothing: print it for the laboratory, with room to write by hand."],
        [
          "Results",
          "One row a sheet. Type or paste over the rows; right below the last one the table grows.",
        ],
        [
          "Comparison",
          "Nothing: every dose against the blank, with limits that allow for all of them.",
        ],
        ["Fit", "The gain that is wanted, and the shape of the curve."],
        ["Mill run", "The machine, and the doses of the run, step by step."],
      ],
      notCovered:
        "The unit is the batch: sheets of one batch say nothing about how batches differ. Laboratory sheets are made without a closed loop: for what the machine keeps see the workbooks dose-and-effluent and strength-cost. One property is judged; look at the others, too. Once the first batch is made, leave plan and order as they are.",
      cautions: [
        "Starch dust can explode, cooked starch scalds, spills are slippery, and chests are confined spaces. The sheets Make-up and Mill run say more.",
      ],
    }),
    planSheet,
    makeUpSheet,
    benchSheet,
    resultsSheet,
    comparisonSheet,
    fitSheet,
    millRunSheet,
  ],
};
