import type { Plan } from "../../../src/workbook/plan";
import { aboutSheet } from "../parts/about";
import { costSheet } from "./cost";
import { gridSheet } from "./grid";
import { mixSheet } from "./mix";
import { ordersSheet } from "./orders";
import { refiningSheet } from "./refining";
import { samplesSheet } from "./samples";
import { starchSheet } from "./starch";
import { stockSheet } from "./stock";
import { uncertaintySheet } from "./uncertainty";

const question = "Starch or refining: what does a unit of strength cost?";

export const strengthCost: Plan = {
  id: "strength-cost",
  title: "Strength and cost",
  question,
  sheets: [
    aboutSheet({
      name: "About the strength",
      title: "Strength and cost",
      question,
      answers: [
        ["By cationic starch, on average", "{starchUnitCost}", "money/t per N·m/g", "0.00"],
        ["By refining, on average", "{refiningUnitCost}", "money/t per N·m/g", "0.00"],
        ["Chance that refining is cheaper", "{refiningCheaper}", "of the samples", "0 %"],
        ["Cheapest mix for the gain wanted", "{mixCost}", "money/t", "0.00"],
        ["Saved by the best order", "{orderSaving}", "money/t", "0.00"],
      ],
      typing: [
        [
          "Stock",
          "Furnish, loop and stock line; four additives with price, dose and the sites that they find; and the order of addition that is used.",
        ],
        ["Starch", "The measured response to cationic starch, a batch a row."],
        ["Refining", "The measured response to refining; what power and slower drainage cost."],
        ["Cost", "Nothing: what stays where, and what a unit of strength costs by each."],
        ["Order", "Nothing: the same starch, dosed elsewhere."],
        ["Mix", "The gain that is wanted, and the limits of drainage and COD."],
        ["Price and retention", "Prices and shares to look at; what the strength is sold for."],
        ["Uncertainty", "The range of what is not known for sure. Samples holds a thousand draws."],
      ],
      notCovered:
        "One property is judged, on laboratory sheets: look at stiffness, compression, formation and runnability, too. Additives are looked at one by one, as if none took the other's sites, and their gains are added. The responses of three additives are assumed until they are measured. Prices, constants and results are invented.",
      cautions: [
        "Starch dust can explode, cooked starch scalds, polymer spills are slippery; polyacrylamides hold traces of monomer, glyoxalated ones free glyoxal.",
        "More additive is more load to the effluent, more refining slower drainage: try it in steps, within the permit.",
      ],
    }),
    stockSheet,
    starchSheet,
    refiningSheet,
    costSheet,
    ordersSheet,
    mixSheet,
    gridSheet,
    uncertaintySheet,
    samplesSheet,
  ],
};
