import type { Plan } from "../../src/workbook/plan";
import { doseAndEffluent } from "./dose-and-effluent";

/** The workbooks that people start from, in the order of the work. */
export const plans: readonly Plan[] = [doseAndEffluent];
