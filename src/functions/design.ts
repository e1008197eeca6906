import { choice, flag } from "../cells/choice";
import { elementwise } from "../cells/elementwise";
import {
  aboveZeroUpTo,
  falseAlarms,
  LARGEST_SEED,
  type Limits,
  MOST_ROWS,
  notNegative,
  optionalQuantity,
  quantity,
  wholeNumber,
} from "../cells/quantity";
import { vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { doseLadder, SPACINGS } from "../model/trial/ladder";
import { batchesPerLevel } from "../model/trial/replicates";
import { runOrder } from "../model/trial/run-order";

const MOST_TREATMENTS = 49;

const chanceToShow: Limits = {
  least: 0.1,
  most: 0.9999,
  words: "a fraction from 0.1 to 0.9999, e.g. 0.8 for 80 %",
};
/**
 * How doses are spaced.
 * @customenum {string}
 */
declare enum Spacing {
  /** The same distance between neighbours */
  even = "even",
  /** The same ratio between neighbours */
  ratio = "ratio",
}

const ladder = whole(
  "TRIAL.LADDER",
  [
    quantity("lowest", "kg/t", notNegative),
    quantity("highest", "kg/t", notNegative),
    wholeNumber("steps", 1, MOST_ROWS),
    choice("spacing", SPACINGS, "even"),
    flag("blank", true),
  ],
  (...values) => doseLadder(...values).map((dose) => [dose]),
);

/**
 * Doses of a trial from the lowest to the highest, with a blank before them. Take the highest dose beyond the
 * one that you expect to use: a response cannot be read where it was not tried.
 * @customfunction TRIAL.LADDER
 * @param lowest Lowest dose above the blank [kg/t]; 0 or more.
 * @param highest Highest dose [kg/t]; above the lowest.
 * @param steps Number of doses, the blank not counted [count]; 1 to 100,000.
 * @param [spacing] Spacing of the doses [one of: even, ratio]; even if left out.
 * @param [blank] Whether 0 stands before the doses [TRUE or FALSE]; TRUE if left out.
 * @returns Column of doses [kg/t].
 * @equation x_i = x_1 + (x_s - x_1)\frac{i - 1}{s - 1} \quad\text{or}\quad x_i = x_1 \left(\frac{x_s}{x_1}\right)^{\frac{i - 1}{s - 1}}
 * @range A constant ratio starts above 0.
 * @source Arithmetic.
 * @words dose ladder, dose response, dosage series, levels of a trial
 * @example =WETEND.TRIAL.LADDER(3, 12, 4) → {0;3;6;9;12}
 * @example =WETEND.TRIAL.LADDER(2, 16, 4, "ratio", FALSE) → {2;4;8;16}
 * @requiresAddress
 */
export function trialLadder(
  lowest: any[][],
  highest: any[][],
  steps: any[][],
  spacing: Spacing,
  blank: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return ladder(lowest, highest, steps, spacing, blank, invocation);
}

const replicates = elementwise(
  "TRIAL.REPLICATES",
  [
    quantity("cv", "fraction", aboveZeroUpTo(1)),
    quantity("difference", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("power", "fraction", chanceToShow, 0.8),
    optionalQuantity("alpha", "fraction", falseAlarms, 0.05),
    wholeNumber("treatments", 1, MOST_TREATMENTS, 1),
  ],
  batchesPerLevel,
);

/**
 * How many independent batches of every level, the control included, it takes to show a difference of the size
 * that matters. The unit is the batch (one make-up of treated stock): more sheets of one batch do not replace it.
 * @customfunction TRIAL.REPLICATES
 * @param cv Coefficient of variation from batch to batch at one dose [fraction]; above 0, up to 1.
 * @param difference Difference between a treatment and the control that must not be missed, of the mean [fraction]; above 0, up to 1.
 * @param [power] Chance to show that difference where it exists [fraction]; 0.1 to 0.9999; 0.8 if left out.
 * @param [alpha] Chance of a false alarm in the whole trial, two-sided [fraction]; 0.0001 to 0.5; 0.05 if left out.
 * @param [treatments] Treatments compared with the one control [count]; 1 to 49; 1 if left out.
 * @returns Batches of every level, rounded up, at least 2 [count].
 * @equation n = \min\left\{n : P\left(T'_{\nu}(\delta) > t_{\alpha,k,\nu}\right) \ge \text{power}\right\}, \quad \delta = \frac{\text{difference}}{\text{cv}}\sqrt{\frac{n}{2}}, \quad \nu = (k + 1)(n - 1)
 * @range Batches that are independent, equally many at every level, and vary alike and normally at each.
 * @source Noncentral t, as R's power.t.test has it for one treatment; the critical value for several against one control: Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096.
 * @words sample size, how many sheets, how many repeats, power analysis, number of trials
 * @example =WETEND.TRIAL.REPLICATES(0.04, 0.05) → 12
 * @example =WETEND.TRIAL.REPLICATES(0.04, 0.05, 0.9, 0.05, 5) → 19
 * @requiresAddress
 */
export function trialReplicates(
  cv: any[][],
  difference: any[][],
  power: any[][],
  alpha: any[][],
  treatments: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return replicates(cv, difference, power, alpha, treatments, invocation);
}

const order = whole(
  "TRIAL.ORDER",
  [
    vector("doses", "n", "kg/t", notNegative),
    wholeNumber("replicates", 1, MOST_ROWS),
    wholeNumber("seed", 0, LARGEST_SEED),
  ],
  (...values) => [["block", "run", "dose [kg/t]"], ...runOrder(...values)],
);

/**
 * Run order in randomised complete blocks: every dose once in each block (a day, a make-up of stock), in an
 * order of its own. What drifts meanwhile then falls on all doses alike; an ascending order would take the
 * drift for the effect of the dose.
 * @customfunction TRIAL.ORDER
 * @param doses Doses, the blank among them [kg/t]; 0 or more; a row or a column.
 * @param replicates Blocks, that is batches of every dose [count]; 1 or more, at most 100,000 runs.
 * @param seed Any number that picks the order [whole number]; 0 to 4294967295. The same seed gives the same order on every machine.
 * @returns Table: block, run, dose, a row a run [dose in kg/t].
 * @equation \text{in each block an independent random permutation of the doses}
 * @range Any number of doses; a dose that is given twice runs twice in every block.
 * @source Fisher, The Design of Experiments (1935); random numbers: Salmon et al., Parallel random numbers: as easy as 1, 2, 3, SC '11 (2011).
 * @words randomise, randomize, run sequence, blocks, design of experiment
 * @example =WETEND.TRIAL.ORDER({0,4,8}, 2, 7) → {"block","run","dose [kg/t]";1,1,4;1,2,8;1,3,0;2,4,4;2,5,8;2,6,0}
 * @requiresAddress
 */
export function trialOrder(
  doses: any[][],
  replicates: any[][],
  seed: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return order(doses, replicates, seed, invocation);
}
