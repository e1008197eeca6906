import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { actualSheet } from "./actual";
import { budgetSheet } from "./budget";
import { chargeSheet } from "./charge";
import { paritySheet } from "./parity";
import { paritySamplesSheet } from "./parity-samples";
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
        ["Above the budget so far", soFar("overspent"), "money", "+#,##0;-#,##0;0"],
        ["of which price", soFar("priceVariance"), "money", "+#,##0;-#,##0;0"],
        ["of which usage", soFar("usageVariance"), "money", "+#,##0;-#,##0;0"],
        ["of which activity", soFar("activityVariance"), "money", "+#,##0;-#,##0;0"],
        ["Effluent charge so far", soFar("chargeForYear"), "money", "#,##0"],
      ],
      typing: [
        [
          "Budget",
          "The additive's name; output, dose and price of each month as planned. The dose is the one that the workbook dose-and-effluent sets.",
        ],
        [
          "Actual",
          "Output, additive used, price paid and retention of each month that is over. Months to come stay blank.",
        ],
        [
          "Variance",
          "The first and the last month of a quarter, or of any span. It splits the difference into price, usage and activity, to the cent.",
        ],
        ["Effluent charge", "Nothing: it prices the COD of the additive that is not retained."],
        [
          "Parity",
          "This additive and another one: price, retention, effect and oxygen demand, with the range of what is not known for sure. It says at which price the other is worth buying, and how sure that is. Parity samples holds a thousand draws.",
        ],
      ],
      notCovered:
        "One additive: for a second one add the template again, and its sheets and names take a 2. Tax, interest, stock that changes over the year and fixed costs of the dosing plant are left out. A variance says where the money went, not who is to blame: a dirty furnish costs additive, too.",
      cautions: [
        "A cheaper additive may bring other hazards, other food-contact rules and another load to the effluent: ask before the change, not after.",
      ],
    }),
    budgetSheet,
    actualSheet,
    varianceSheet,
    chargeSheet,
    paritySheet,
    paritySamplesSheet,
  ],
};
