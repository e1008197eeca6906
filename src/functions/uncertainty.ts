import { choice } from "../cells/choice";
import { columns } from "../cells/columns";
import { outcomes } from "../cells/outcomes";
import {
  anyNumber,
  insideUnit,
  LARGEST_SEED,
  MOST_ROWS,
  optionalQuantity,
  quantity,
  wholeNumber,
} from "../cells/quantity";
import { optionalLabels, vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { drivers } from "../model/uncertainty/drivers";
import { SAMPLE_SHAPES, sample } from "../model/uncertainty/sample";
import { summarise } from "../model/uncertainty/summary";

/**
 * The distribution of a quantity that is known within a range.
 * @customenum {string}
 */
declare enum SampleShape {
  /** Rises to the likely value and falls after it */
  triangular = "triangular",
  /** Every value from low to high alike */
  uniform = "uniform",
  /** A normal with low to high for its central 95 % */
  normal = "normal",
}

const samples = whole(
  "UNCERTAINTY.SAMPLE",
  [
    quantity("low", "any unit", anyNumber),
    quantity("likely", "any unit", anyNumber),
    quantity("high", "any unit", anyNumber),
    wholeNumber("count", 1, MOST_ROWS),
    wholeNumber("seed", 0, LARGEST_SEED),
    choice("shape", SAMPLE_SHAPES, "triangular"),
    wholeNumber("stream", 1, LARGEST_SEED, 1),
  ],
  (...values) => Array.from(sample(...values), (value) => [value]),
);

/**
 * A column of samples of a quantity that is known within a range. Fed into a formula it gives a column of
 * results. Give each quantity of one calculation a stream of its own, else they rise and fall together.
 * @customfunction UNCERTAINTY.SAMPLE
 * @param low Lowest value, of a normal the lower end of its central 95 % [any unit]; up to likely.
 * @param likely Most likely value [unit of low]; from low to high; of a normal the middle, and not used by a uniform.
 * @param high Highest value, of a normal the upper end of its central 95 % [unit of low]; from likely.
 * @param count Number of samples [count]; 1 to 100,000.
 * @param seed Any number that picks the sample [whole number]; 0 to 4294967295. The same seed gives the same sample on every machine.
 * @param [shape] Distribution [one of: triangular, uniform, normal]; triangular if left out.
 * @param [stream] Which of the independent samples of the seed [whole number]; 1 to 4294967295; 1 if left out.
 * @returns Column of samples [unit of low].
 * @equation x_{\pi(i)} = F^{-1}\left(\frac{i - 1 + u_i}{\text{count}}\right), \quad u_i \in (0, 1)
 * @range A normal with a likely value off the middle is refused: a triangle suits a skewed belief. A normal has tails beyond low and high.
 * @source McKay, Beckman, Conover, Technometrics 21 (1979) 239 (Latin hypercube); random numbers: Salmon et al., SC '11 (2011).
 * @words Monte Carlo, random numbers, Latin hypercube, simulate, spread of an input
 * @example =WETEND.UNCERTAINTY.SAMPLE(1, 1.5, 3, 4, 7) → {1.620564522;2.438856162;1.296069244;1.791977664}
 * @requiresAddress
 */
export function uncertaintySample(
  low: any[][],
  likely: any[][],
  high: any[][],
  count: any[][],
  seed: any[][],
  shape: SampleShape,
  stream: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return samples(low, likely, high, count, seed, shape, stream, invocation);
}

const summary = whole(
  "UNCERTAINTY.SUMMARY",
  [outcomes("values", "any unit"), optionalQuantity("coverage", "fraction", insideUnit, 0.95)],
  ({ numbers, errors }, coverage) => {
    const found = summarise(numbers, coverage);
    return [
      ["mean", found.mean],
      ["standard uncertainty", found.standardUncertainty],
      ["median", found.median],
      ["lower limit", found.lower],
      ["upper limit", found.upper],
      ["shortest interval, lower limit", found.shortestLower],
      ["shortest interval, upper limit", found.shortestUpper],
      ["values that were errors", errors],
    ];
  },
);

/**
 * What a column of results says about the result. Values that are errors are left out and counted: many of
 * them mean that the inputs reach where the formula has no answer, and that the rest flatters.
 * @customfunction UNCERTAINTY.SUMMARY
 * @param values Results of a calculation over samples [any unit]; a row or a column; errors allowed.
 * @param [coverage] Share of the values inside the interval [fraction]; above 0, below 1; 0.95 if left out.
 * @returns Table: mean, standard uncertainty, median, lower and upper limit with equal chances outside on both sides, the same of the shortest interval [unit of the values], values that were errors [count].
 * @equation \bar y = \frac{1}{M}\sum y_r, \quad u^2 = \frac{\sum (y_r - \bar y)^2}{M - 1}, \quad \left[y_{(r)}, y_{(r + q)}\right], \quad q = \text{coverage}\cdot M, \quad r = \frac{M - q}{2}
 * @range Values enough: at 95 % at least 11, for two sound digits of a limit ten thousand.
 * @source JCGM 101:2008, 7.6 and 7.7.
 * @words Monte Carlo result, confidence interval, how sure, coverage interval, error of a result, percentile
 * @example =WETEND.UNCERTAINTY.SUMMARY({1,2,3,4,5,6,7,8,9,10}, 0.8) → {"mean",5.5;"standard uncertainty",3.02765;"median",5.5;"lower limit",1;"upper limit",9;"shortest interval, lower limit",1;"shortest interval, upper limit",9;"values that were errors",0}
 * @requiresAddress
 */
export function uncertaintySummary(
  values: any[][],
  coverage: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return summary(values, coverage, invocation);
}

const ranking = whole(
  "UNCERTAINTY.DRIVERS",
  [
    vector("results", "n", "any unit", anyNumber),
    columns("inputs", "any unit", anyNumber),
    optionalLabels("names", "k"),
  ],
  (...values) => [
    ["input", "rank correlation", "share of the spread [fraction]"],
    ...drivers(...values).map(({ input, rankCorrelation, share }) => [
      input,
      rankCorrelation,
      share,
    ]),
  ],
);

/**
 * Which inputs a result owes its spread to, largest first: what to measure better. The share is the squared
 * rank correlation. What the shares leave to 1 no input explains alone; where inputs go together their shares
 * overlap, and are scaled to sum to 1.
 * @customfunction UNCERTAINTY.DRIVERS
 * @param results Results of a calculation over samples [any unit]; at least 3.
 * @param inputs Samples that the results were computed from [any unit]; a column an input, a row a result.
 * @param [names] Names of the inputs [names]; a row or a column; input 1, input 2 and so on if left out.
 * @returns Table, a row an input: its name, rank correlation with the result [-1 to 1], share of the spread [fraction].
 * @equation \rho_j = \operatorname{corr}\left(\operatorname{rank} x_j, \operatorname{rank} y\right), \quad \text{share}_j = \frac{\rho_j^2}{\max\left(1, \sum \rho^2\right)}
 * @range Inputs that push the result one way only, up or down; an input that never changes has a correlation of 0.
 * @source Spearman, Am. J. Psychol. 15 (1904) 72; ties: Kendall, Biometrika 33 (1945) 239.
 * @words sensitivity, tornado, what matters most, importance, correlation
 * @example =WETEND.UNCERTAINTY.DRIVERS({1;2;3;4;5;6}, {1,5;3,1;2,4;4,6;6,2;5,3}, {"dose","solids"}) → {"input","rank correlation","share of the spread [fraction]";"dose",0.885714,0.78449;"solids",-0.142857,0.020408}
 * @requiresAddress
 */
export function uncertaintyDrivers(
  results: any[][],
  inputs: any[][],
  names: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return ranking(results, inputs, names, invocation);
}
