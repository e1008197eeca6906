import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { actualSheet } from "./actual";
import { budgetSheet } from "./budget";
import { chargeSheet } from "./charge";
import { paritySheet } from "./parity";
import { varianceSheet } from "./variance";

const question = "What will it cost, and why was it different?";

export const chemicalBudget: Plan = {
  id: "chemical-budget",
  title: "Chemical budget",
  question,
  sheets: [
    aboutSheet({
      name: "About the budget",
      title: "Chemical budget",
      question,
      answers: [
        ["Budget of the year", "{budgeted}", "money", "#,##0"],
        ["Over the budget", "{overspent}", "money", "+#,##0;-#,##0;0"],
        ["because of the price", "{priceVariance}", "money", "+#,##0;-#,##0;0"],
        ["because of usage", "{usageVariance}", "money", "+#,##0;-#,##0;0"],
        ["because of activity", "{activityVariance}", "money", "+#,##0;-#,##0;0"],
        ["Charge for what left", "{chargeForYear}", "money", "#,##0"],
      ],
      typing: [
        [
          "Budget",
          "Output, dose and price of each month as planned. The dose is the one that the workbook dose-and-effluent sets.",
        ],
        ["Actual", "Output, starch taken from stores, price paid and retention, month by month."],
        [
          "Variance",
          "Nothing: it splits the difference into price, usage and activity, to the cent.",
        ],
        ["Charge", "Nothing: what the works asks for the COD of the starch that leaves."],
        ["Parity", "Another additive: its price, retention and effect."],
      ],
      notCovered:
        "Tax, interest, stocks that change over the year and fixed costs of the dosing plant are left out. Where the year is not over, shorten the tables to the months that are. A variance says where the money went, not who is to blame: a dirty furnish costs starch, too.",
      cautions: [
        "A cheaper additive may bring other hazards, other food-contact rules and another load to the effluent: ask before the change, not after.",
      ],
    }),
    budgetSheet,
    actualSheet,
    varianceSheet,
    chargeSheet,
    paritySheet,
  ],
};
