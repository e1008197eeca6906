import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { doseSheet } from "./dose";
import { logSheet } from "./log";
import { permitSheet } from "./permit";
import { thirtyDaysSheet } from "./thirty-days";
import { whereItGoesSheet } from "./where-it-goes";

const question =
  "What do I set so that enough starch stays in the sheet, and what leaves with the water?";

export const doseAndEffluent: Plan = {
  id: "dose-and-effluent",
  title: "Dose and effluent",
  question,
  sheets: [
    aboutSheet({
      name: "About the dose",
      title: "Dose and effluent",
      question,
      answers: [
        ["Dose to add", "{dose}", "kg/t", "0.00"],
        ["Dosing pump", "{pump}", "L/h", "#,##0"],
        ["Starch that leaves", "{lost}", "kg/d", "#,##0"],
        ["Largest dose within the permit", "{mostDose}", "kg/t", "0.0"],
        ["Days of the month above the permit", "{daysAbove}", "days", "0"],
      ],
      typing: [
        ["Dose", "What is wanted, the machine, the additive, and what the other ways cost."],
        [
          "Where it goes",
          "The furnish with its constants, from your own beaker test, and what stays in one pass, from your own samples.",
        ],
        ["Permit", "The limits, and the load of everything else."],
        [
          "Log",
          "One row a day. For more days let the table grow and paste them in: the columns beside it follow by themselves.",
        ],
        ["Thirty days", "Nothing: it draws the log and sums it up."],
      ],
      notCovered:
        "The load is the raw load at the machine's outfall, before treatment. Anionic trash, other cationic additives and the time that adsorption takes are left out. Retention is taken as steady: a day with a break or a grade change is not. The permit and its authority decide, not this workbook.",
      cautions: [
        "Starch dust can explode, cooked starch scalds, and tanks and chests are confined spaces: hydrogen sulphide gathers where stock or starch stands.",
        "Effluent above its limit harms the water that it goes to. Tell the authority as the permit says.",
      ],
    }),
    doseSheet,
    whereItGoesSheet,
    permitSheet,
    logSheet,
    thirtyDaysSheet,
  ],
};
