import { cases } from "../cells/cases";
import { choice, flag } from "../cells/choice";
import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  aboveZeroUpTo,
  anyNumber,
  insideUnit,
  type Limits,
  notNegative,
  optionalQuantity,
  quantity,
  wholeNumber,
} from "../cells/quantity";
import { labels, optionalLabel, optionalLabels, vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { type ComparedLevel, compareWithControl } from "../model/trial/compare";
import { handsheet } from "../model/trial/handsheet";
import { doseLadder, SPACINGS } from "../model/trial/ladder";
import { makeDown } from "../model/trial/make-down";
import { batchesPerLevel } from "../model/trial/replicates";
import { runOrder } from "../model/trial/run-order";
import { settlingTime } from "../model/trial/settling";

const MOST_ROWS = 100_000;
const MOST_TREATMENTS = 49;
const MOST_SHEETS = 1000;
const LARGEST_SEED = 4_294_967_295;
/** Thicker than this no laboratory stock is: a larger number is a percentage typed for a fraction. */
const THICKEST_LABORATORY_STOCK = 0.15;

const falseAlarms: Limits = {
  least: 0.0001,
  most: 0.5,
  words: "a fraction from 0.0001 to 0.5, e.g. 0.05 for 5 %",
};
const chanceToShow: Limits = {
  least: 0.1,
  most: 0.9999,
  words: "a fraction from 0.1 to 0.9999, e.g. 0.8 for 80 %",
};
const alpha = optionalQuantity("alpha", "fraction", falseAlarms, 0.05);

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
    alpha,
    wholeNumber("treatments", 1, MOST_TREATMENTS, 1),
  ],
  batchesPerLevel,
);

/**
 * Independent batches of every level, the control included, that will show a difference of the size that
 * matters. The unit is the batch (one make-up of treated stock): more sheets of one batch do not replace it.
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

const batchOfSheets = cases(
  "TRIAL.HANDSHEET",
  [
    quantity("dose", "kg/t", notNegative),
    quantity("stockConsistency", "fraction", aboveZeroUpTo(THICKEST_LABORATORY_STOCK)),
    quantity("solution", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("grammage", "g/m²", aboveZero, 60),
    optionalQuantity("area", "m²", aboveZero, 0.02),
    wholeNumber("sheets", 1, MOST_SHEETS, 1),
  ],
  (...values) => {
    const { fibreGrams, stockMillilitres, additiveMilligrams, solutionMillilitres } = handsheet(
      ...values,
    );
    return [fibreGrams, stockMillilitres, additiveMilligrams, solutionMillilitres];
  },
  ["fibre [g]", "stock [mL]", "additive [mg]", "solution [mL]"],
);

/**
 * What one batch of laboratory sheets takes. Treat the stock of a whole batch at once and form its sheets from
 * it. Stock and solution are taken to weigh 1 g/mL. Hot starch scalds and its dust can explode: the supplier's
 * safety data sheet, the site's rules and local law come first.
 * @customfunction TRIAL.HANDSHEET
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param stockConsistency Consistency of the stock [fraction]; above 0, up to 0.15.
 * @param solution Strength of the additive solution, dry active by mass [fraction]; above 0, up to 1.
 * @param [grammage] Oven-dry grammage of the sheet [g/m²]; above 0; 60 if left out.
 * @param [area] Area of the sheet [m²]; above 0; 0.02 if left out.
 * @param [sheets] Sheets of one batch [count]; 1 to 1000; 1 if left out.
 * @returns Table: fibre [g], stock [mL], additive [mg], solution [mL] of one batch; with columns of arguments a row a case, in this order.
 * @equation m = \text{grammage}\cdot\text{area}\cdot\text{sheets}, \quad V_{\text{stock}} = \frac{m}{c}, \quad a = \text{dose}\cdot m, \quad V_{\text{solution}} = \frac{a}{1000\,w}
 * @range Thin stock and weak solutions.
 * @source TAPPI T 205 and ISO 5269-1: 60 g/m² oven-dry, on 0.02 m² 1.20 g (the area from memory).
 * @words hand sheet, sheet former, laboratory sheet, beaker, bench trial
 * @example =WETEND.TRIAL.HANDSHEET(10, 0.003, 0.01) → {"fibre [g]",1.2;"stock [mL]",400;"additive [mg]",12;"solution [mL]",1.2}
 * @requiresAddress
 */
export function trialHandsheet(
  dose: any[][],
  stockConsistency: any[][],
  solution: any[][],
  grammage: any[][],
  area: any[][],
  sheets: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return batchOfSheets(dose, stockConsistency, solution, grammage, area, sheets, invocation);
}

const mixture = whole(
  "TRIAL.MAKEDOWN",
  [
    quantity("volume", "L", aboveZero),
    quantity("strength", "fraction", aboveZeroUpTo(1)),
    quantity("solids", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("active", "fraction", aboveZeroUpTo(1), 1),
    optionalQuantity("density", "kg/L", aboveZero, 1),
  ],
  (...values) => {
    const { productGrams, waterGrams } = makeDown(...values);
    return [
      ["product [g]", productGrams],
      ["water [g]", waterGrams],
    ];
  },
);

/**
 * Product as received and water for a volume of additive solution. Add powder slowly to stirred water: its
 * dust can explode and a spill is slippery, hot starch scalds. The supplier's safety data sheet, the site's
 * rules and local law come first.
 * @customfunction TRIAL.MAKEDOWN
 * @param volume Volume of the solution [L]; above 0.
 * @param strength Strength of the solution, dry active by mass [fraction]; above 0, up to what the product holds.
 * @param solids Dry solids of the product as received [fraction]; above 0, up to 1.
 * @param [active] Active part of the dry solids [fraction]; above 0, up to 1; 1 if left out.
 * @param [density] Density of the solution [kg/L]; above 0; 1 if left out.
 * @returns Table: product and water [g].
 * @equation m_{\text{product}} = \frac{1000\,V \rho\,w}{\text{solids}\cdot\text{active}}, \quad m_{\text{water}} = 1000\,V\rho - m_{\text{product}}
 * @range Any product; water that steam brings into a cooker counts as water.
 * @source Mass balance.
 * @words make-up, dilution, cook, prepare solution, stock solution
 * @example =WETEND.TRIAL.MAKEDOWN(2, 0.01, 0.88) → {"product [g]",22.7273;"water [g]",1977.2727}
 * @requiresAddress
 */
export function trialMakeDown(
  volume: any[][],
  strength: any[][],
  solids: any[][],
  active: any[][],
  density: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return mixture(volume, strength, solids, active, density, invocation);
}

const paired = true;

const comparison = whole(
  "TRIAL.COMPARE",
  [
    labels("levels", "n", paired),
    vector("values", "n", "in one unit", anyNumber, { paired }),
    optionalLabels("blocks", "n", paired),
    optionalLabels("batches", "n", paired),
    optionalLabel("control"),
    alpha,
  ],
  (...values) => [
    ["level", "batches", "mean", "standard deviation", "difference", "lower", "upper", "p"],
    ...compareWithControl(...values).levels.map(comparedRow),
  ],
);

function comparedRow({ level, batches, mean, deviation, against }: ComparedLevel) {
  const shown = against ?? { estimate: "", lower: "", upper: "", p: "" };
  return [level, batches, mean, deviation ?? "", shown.estimate, shown.lower, shown.upper, shown.p];
}

/**
 * Every level against one control. Limits and p allow for the number of levels, as many separate t tests do
 * not. The unit is the batch: give `batches` wherever a batch made several sheets or strips, which are
 * then averaged. Counted as replicates they raise false alarms four times in ten.
 * @customfunction TRIAL.COMPARE
 * @param levels Dose or name of the treatment of each value [number or name]; a row or a column; 2 to 50 different ones.
 * @param values Measured values [in one unit]; any number but 0, since a blank cell may look like 0.
 * @param [blocks] Block (day, make-up of stock) of each value [number or name]; every block holds every level in the same proportion.
 * @param [batches] Batch that each value is from [number or name]; may be numbered anew at every level; each value is a batch of its own if left out.
 * @param [control] Level that the others are compared with [number or name]; 0 if there is one, else the first in the answer, if left out.
 * @param [alpha] Chance that any limit misses, or of a false alarm in the whole trial, two-sided [fraction]; 0.0001 to 0.5; 0.05 if left out.
 * @returns Table, a row a level (names as they come, then numbers upwards): batches [count], mean, standard deviation of the batch means, difference from the control with its lower and upper limit [in the unit of the values], p [fraction].
 * @equation t_i = \frac{\bar y_i - \bar y_0}{s\sqrt{1/n_i + 1/n_0}}, \quad \bar y_i - \bar y_0 \pm t_{\alpha,k,\nu}\,s\sqrt{1/n_i + 1/n_0}, \quad p_i = P\left(\max_j |T_j| \ge |t_i|\right)
 * @range Independent batches that vary alike and normally at all levels; with blocks, value = level + block + error.
 * @source Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096, and Biometrics 20 (1964) 482; by quadrature, to 1e-6 in p or better.
 * @words significance test, Dunnett, against the blank, multiple comparison, is the difference real
 * @example =WETEND.TRIAL.COMPARE({"blank";"blank";"blank";"a";"a";"a";"b";"b";"b";"c";"c";"c"}, {55;47;48;55;64;64;55;49;52;50;44;41}) → {"level","batches","mean","standard deviation","difference","lower","upper","p";"blank",3,50,4.3589,"","","","";"a",3,61,5.19615,11,0.75121,21.24879,0.036622;"b",3,52,3,2,-8.24879,12.24879,0.896475;"c",3,45,4.58258,-5,-15.24879,5.24879,0.40916}
 * @requiresAddress
 */
export function trialCompare(
  levels: any[][],
  values: any[][],
  blocks: any[][],
  batches: any[][],
  control: any[][],
  alpha: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return comparison(levels, values, blocks, batches, control, alpha, invocation);
}

const settling = elementwise(
  "TRIAL.SETTLING",
  [
    quantity("volume", "m³", aboveZero),
    quantity("purge", "m³/h", aboveZero),
    optionalQuantity("remaining", "fraction", insideUnit, 0.05),
  ],
  settlingTime,
);

/**
 * Hours to wait after a step in dose before sampling, until the white water has followed. What counts is the
 * purge, the water that leaves the loop for good: the flow around the loop renews nothing.
 * @customfunction TRIAL.SETTLING
 * @param volume Volume of the white-water loop with its chests [m³]; above 0.
 * @param purge Water that leaves the loop [m³/h]; above 0.
 * @param [remaining] Part of the step that may still be missing [fraction]; above 0, below 1; 0.05 if left out.
 * @returns Time to wait [h].
 * @equation t = \frac{V}{Q}\ln\frac{1}{\text{remaining}}
 * @range One well-mixed volume; chests in series take longer.
 * @source Balance of a stirred tank.
 * @words waiting time, steady state, equilibrium of the loop, transition, how long
 * @example =WETEND.TRIAL.SETTLING(800, 120) → 19.97154849
 * @requiresAddress
 */
export function trialSettling(
  volume: any[][],
  purge: any[][],
  remaining: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return settling(volume, purge, remaining, invocation);
}
