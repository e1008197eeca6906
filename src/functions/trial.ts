import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  anyNumber,
  falseAlarms,
  insideUnit,
  optionalQuantity,
  quantity,
} from "../cells/quantity";
import { labels, optionalLabel, optionalLabels, vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { type ComparedLevel, compareWithControl } from "../model/trial/compare";
import { settlingTime } from "../model/trial/settling";

const paired = true;

const comparison = whole(
  "TRIAL.COMPARE",
  [
    labels("levels", "n", paired),
    vector("values", "n", "in one unit", anyNumber, { paired }),
    optionalLabels("blocks", "n", paired),
    optionalLabels("batches", "n", paired),
    optionalLabel("control"),
    optionalQuantity("alpha", "fraction", falseAlarms, 0.05),
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
 * @param [blocks] Block (day, make-up of stock) of each value [number or name]; where a batch is lost, levels are compared within the blocks that hold them.
 * @param [batches] Batch that each value is from [number or name]; may be numbered anew at every level; each value is a batch of its own if left out.
 * @param [control] Level that the others are compared with [number or name]; 0 if there is one, else the first in the answer, if left out.
 * @param [alpha] Chance that any limit misses, or of a false alarm in the whole trial, two-sided [fraction]; 0.0001 to 0.5; 0.05 if left out.
 * @returns Table, a row a level (names as they come, then numbers upwards): batches [count], mean, standard deviation of the batch means, difference from the control with its lower and upper limit [in the unit of the values], p [fraction].
 * @equation t_i = \frac{\bar y_i - \bar y_0}{s\sqrt{1/n_i + 1/n_0}}, \quad \bar y_i - \bar y_0 \pm t_{\alpha,k,\nu}\,s\sqrt{1/n_i + 1/n_0}, \quad p_i = P\left(\max_j |T_j| \ge |t_i|\right)
 * @range Independent batches that vary alike and normally at all levels; with blocks, value = level + block + error, and a mean of incomplete blocks has them taken out.
 * @source Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096, and Biometrics 20 (1964) 482; by quadrature, to 1e-6 in p or better. Incomplete blocks by least squares (Yates, Ann. Eugenics 7 (1936) 121; correlations after Hsu, J. Comput. Graph. Stat. 1 (1992) 151; both from memory), to 1e-3 in p, and as exact as the rest where a batch or two are lost.
 * @words significance test, how sure, Dunnett, against the blank, multiple comparison, is the difference real
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
