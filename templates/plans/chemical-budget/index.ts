import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { actualSheet } from "./actual";
import { budgetSheet } from "./budget";
import { chargeSheet } from "./charge";
import { paritySheet } from "./parity";
import { varianceSheet } from "./variance";

const question = "What will it cost, and why was it different?";

/** Before the first month is over there is only the budget. */
const soFar = (name: string) => `IF({monthsMade}=0,"not yet",{${name}})`;

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
        ["Budget of the year", "INDEX({budgetYear},1,3)", "money", "#,##0"],
        ["Over the budget so far", soFar("overspent"), "money", "+#,##0;-#,##0;0"],
        ["because of the price", soFar("priceVariance"), "money", "+#,##0;-#,##0;0"],
        ["because of usage", soFar("usageVariance"), "money", "+#,##0;-#,##0;0"],
        ["because of activity", soFar("activityVariance"), "money", "+#,##0;-#,##0;0"],
        ["Charge for what left", soFar("chargeForYear"), "money", "#,##0"],
      ],
      typing: [
        [
          "Budget",
          "Output, dose and price of each month as planned. The dose is the one that the workbook dose-and-effluent sets.",
        ],
        [
          "Actual",
          "Output, starch taken from stores, price paid and retention of each month that is over. Months to come stay blank.",
        ],
        [
          "Variance",
          "The months of a quarter. It splits the difference into price, usage and activity, to the cent.",
        ],
        ["Charge", "Nothing: what the works asks for the COD of the starch that leaves."],
        ["Parity", "Another additive: its price, retention and effect."],
      ],
      notCovered:
        "Tax, interest, stocks that change over the year and fixed costs of the dosing plant are left out. A variance says where the money went, not who is to blame: a dirty furnish costs starch, too.",
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
