import type { Plan } from "../../src/workbook/plan";
import { chemicalBudget } from "./chemical-budget";
import { doseAndEffluent } from "./dose-and-effluent";
import { doseLadder } from "./dose-ladder";
import { furnishPartition } from "./furnish-partition";
import { strengthCost } from "./strength-cost";

/** The workbooks that people start from, in the order of the work. */
export const plans: readonly Plan[] = [
  furnishPartition,
  doseAndEffluent,
  strengthCost,
  chemicalBudget,
  doseLadder,
];
