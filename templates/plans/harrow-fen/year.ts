import { starch } from "./mill";
import { septemberTotals } from "./september";

/** Share of the starch that is bought but never reaches the machine: bags, spills, cooks thrown away. */
export const purchaseLoss = 0.015;

const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const september = months.indexOf("Sep");

/** What the log of dose-and-effluent comes to, in September's place. */
const withSeptember = (values: readonly number[], its: number) => values.with(september, its);

/** The budget year of the mill: the dose of dose-and-effluent at the price of the contract. */
export const year = {
  months,
  budget: {
    /** Oven-dry t. */
    output: [9440, 8810, 9750, 9120, 9750, 9440, 9120, 7550, 9440, 9750, 9440, 8180],
    dose: months.map(() => starch.dose),
    price: months.map(() => starch.activePrice),
  },
  actual: {
    output: withSeptember(
      [9553, 8678, 9789, 8773, 9896, 9516, 9029, 7776, 0, 9506, 9534, 8344],
      Math.round(septemberTotals.output),
    ),
    /** Dry kg bought and used. */
    bought: withSeptember(
      [75070, 68900, 79010, 74010, 82580, 76320, 71130, 60870, 0, 74120, 73760, 65230],
      Math.round(septemberTotals.pumped / (1 - purchaseLoss)),
    ),
    price: [0.775, 0.775, 0.78, 0.78, 0.78, 0.785, 0.812, 0.812, 0.812, 0.805, 0.805, 0.805],
    retention: [0.836, 0.835, 0.831, 0.822, 0.824, 0.832, 0.835, 0.836, 0.833, 0.838, 0.839, 0.836],
  },
};
