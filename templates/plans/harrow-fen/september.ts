import { serialDate } from "../../../src/workbook/dates";
import { mill, starch } from "./mill";

/** Thirty invented days. The nineteenth was overdosed, the twenty-fifth had a dirty furnish. */
export const september = {
  days: Array.from({ length: 30 }, (_, index) => serialDate(2025, 9, index + 1)),
  /** t/d as made. */
  paper: [
    338, 348, 328, 334, 342, 336, 337, 343, 339, 345, 344, 262, 327, 348, 344, 326, 331, 341, 334,
    339, 334, 341, 345, 340, 332, 342, 338, 340, 338, 345,
  ],
  /** Consistency where the starch is added. */
  consistency: [
    0.01, 0.01, 0.0101, 0.0096, 0.01, 0.0095, 0.0094, 0.0092, 0.0095, 0.0102, 0.0096, 0.009, 0.0088,
    0.0099, 0.01, 0.0095, 0.0104, 0.0103, 0.0102, 0.0097, 0.0101, 0.01, 0.01, 0.0102, 0.0099,
    0.0096, 0.0098, 0.0102, 0.01, 0.0092,
  ],
  /** L/h of starch solution. */
  flow: [
    3380, 3450, 3320, 3330, 3670, 3380, 3550, 3590, 3370, 3410, 3350, 2730, 3180, 3520, 3710, 3040,
    3270, 3430, 6120, 3210, 3380, 3470, 3370, 3480, 3480, 3310, 3540, 3510, 3040, 3580,
  ],
  /** Dry starch in the solution. */
  strength: [
    0.0299, 0.0306, 0.0303, 0.0302, 0.0296, 0.0298, 0.0297, 0.03, 0.0303, 0.0309, 0.0297, 0.0291,
    0.0302, 0.0301, 0.0291, 0.0305, 0.0303, 0.0296, 0.0309, 0.0308, 0.0307, 0.0299, 0.0312, 0.0298,
    0.0302, 0.0315, 0.0284, 0.0305, 0.0307, 0.0301,
  ],
  /** m³/d */
  effluent: [
    2790, 2950, 2700, 2960, 2970, 2980, 2800, 2660, 2720, 2910, 2780, 3070, 2770, 3090, 3010, 2880,
    2940, 3030, 2730, 3050, 2940, 2970, 2850, 3120, 2850, 2830, 3020, 2700, 3030, 2880,
  ],
  /** kg/d COD of all else. */
  background: [
    2600, 2640, 2455, 2560, 2735, 2645, 2645, 2590, 2700, 2495, 2570, 2675, 2715, 2680, 2670, 2715,
    2680, 2625, 2605, 2500, 2635, 2620, 2585, 2375, 3090, 2610, 2510, 2585, 2480, 2640,
  ],
};

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** The month as the accounts have it: oven-dry tonnes, and kg of dry starch that the pump gave. */
export const septemberTotals = {
  output: sum(september.paper) * (1 - mill.paperMoisture),
  pumped: sum(
    september.flow.map(
      (flow, day) => flow * 24 * starch.solutionDensity * (september.strength[day] as number),
    ),
  ),
};
