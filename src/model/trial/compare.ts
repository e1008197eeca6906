import { type BatchMeans, batchMeans } from "../batches/batch-means";
import { Groups, type Label } from "../batches/groups";
import { impossible, noAnswer } from "../refusal";
import { sumOfSquares } from "../vectors";
import { areComplete } from "./complete-blocks";
import { manyToOne } from "./many-to-one";
import { loadingsOf, withinBlocks } from "./within-blocks";

/** A level of the trial beside the control. The control itself has nothing to differ from. */
export interface ComparedLevel {
  readonly level: Label;
  readonly batches: number;
  /** Of the batches; in incomplete blocks, with the blocks taken out. */
  readonly mean: number;
  /** Standard deviation of the batch means as they are; undefined with a single batch. */
  readonly deviation: number | undefined;
  readonly against: Difference | undefined;
}

export interface Difference {
  readonly estimate: number;
  /** Its variance, in units of that of one batch. */
  readonly spread: number;
  readonly lower: number;
  readonly upper: number;
  readonly p: number;
}

export interface Comparison {
  readonly levels: readonly ComparedLevel[];
  readonly control: Label;
  /** Whether every block holds the levels in the same proportion; else differences are those within blocks. */
  readonly isComplete: boolean;
  /** The standard deviation between batches that is common to all levels, blocks taken out. */
  readonly deviation: number;
  readonly degrees: number;
  /** The t that a difference must pass. */
  readonly critical: number;
}

const MOST_LEVELS = 50;
/** What rounding leaves of a sum of squares in which nothing varies. */
const ROUNDING = 1e-26;

/**
 * Every level against one control, with limits that hold for all levels together and p values that allow
 * for the number of levels (two-sided). The variance is common to all levels; block effects are taken out
 * by the additive model value = level + block, which need not hold every level.
 *
 * Source: C. W. Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096–1121, with unequal numbers after Dunnett,
 * Biometrics 20 (1964) 482–491.
 */
export function compareWithControl(
  levels: readonly Label[],
  values: readonly number[],
  blocks: readonly Label[] | undefined,
  batches: readonly Label[] | undefined,
  control: Label | undefined,
  alpha: number,
): Comparison {
  const blank = values.indexOf(0);
  if (blank >= 0) {
    impossible(
      `Value ${blank + 1} of ${values.length} is 0 or blank. Clear its whole row, or, where 0 was measured, add the same number to all values.`,
    );
  }
  const means = batchMeans(levels, values, blocks, batches);
  const names = inOrder(means.levels);
  if (names.length < 2) {
    impossible(`The only level is ${names[0]}. Give a control and at least one level to compare.`);
  }
  if (names.length > MOST_LEVELS) {
    impossible(`There are ${names.length} levels. Give at most ${MOST_LEVELS}.`);
  }
  const reference = controlAmong(names, control);
  const isComplete = areComplete(means);
  const contrasts = isComplete ? plainly(means, reference) : byLeastSquares(means, reference);

  const { degrees, variance } = residual(means, contrasts.effectOf);
  const distribution = manyToOne(contrasts.ratios, 1, degrees);
  const critical = distribution.critical(alpha);
  const compared = names.map((level): ComparedLevel => {
    const { count: batches, deviation } = sampleOf(means, level);
    const shown = { level, batches, mean: contrasts.meanOf(level), deviation };
    if (level === reference) return { ...shown, against: undefined };
    const [estimate, spread] = [contrasts.effectOf(level), contrasts.spreadOf(level)];
    const error = Math.sqrt(variance * spread);
    const reach = critical * error;
    const against = {
      estimate,
      spread,
      lower: estimate - reach,
      upper: estimate + reach,
      p: distribution.tail(Math.abs(estimate) / error),
    };
    return { ...shown, against };
  });
  const deviation = Math.sqrt(variance);
  return { levels: compared, control: reference, isComplete, deviation, degrees, critical };
}

/** The levels against the control, but for how batches vary. */
interface Contrasts {
  readonly effectOf: (level: Label) => number;
  readonly meanOf: (level: Label) => number;
  /** The variance of a difference, in units of that of one batch. */
  readonly spreadOf: (level: Label) => number;
  /** For each treated level λ²/(1 − λ²), where correlations of differences are λ·λ: of whole blocks treated/control. */
  readonly ratios: readonly number[];
}

/** Where blocks cancel out, the means tell all. */
function plainly(means: BatchMeans<Label>, control: Label): Contrasts {
  const samples = new Map([...new Set(means.levels)].map((name) => [name, sampleOf(means, name)]));
  const of = (level: Label) => samples.get(level) as Sample;
  const base = of(control);
  const treated = [...samples.keys()].filter((level) => level !== control);
  return {
    effectOf: (level) => of(level).mean - base.mean,
    meanOf: (level) => of(level).mean,
    spreadOf: (level) => 1 / of(level).count + 1 / base.count,
    ratios: treated.map((level) => of(level).count / base.count),
  };
}

/** Means are those that whole blocks would be expected to have given. */
function byLeastSquares({ values, levels, blocks }: BatchMeans<Label>, control: Label): Contrasts {
  const { effects, spreads, correlations } = withinBlocks(values, levels, blocks, control);
  const effectOf = (level: Label) => effects.get(level) as number;
  const average = (numbers: readonly number[]) =>
    numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
  const ground = average(Array.from(values)) - average(levels.map(effectOf));
  return {
    effectOf,
    meanOf: (level) => ground + effectOf(level),
    spreadOf: (level) => spreads.get(level) as number,
    ratios: loadingsOf(correlations).map((loading) => loading ** 2 / (1 - loading ** 2)),
  };
}

/** Names as they come, then numbers upwards: a blank that is named stands before its doses. */
function inOrder(levels: readonly Label[]): Label[] {
  const all = [...new Set(levels)];
  const numbers = all.filter((level) => typeof level === "number").sort((a, b) => a - b);
  return [...all.filter((level) => typeof level === "string"), ...numbers];
}

function controlAmong(names: readonly Label[], control: Label | undefined): Label {
  if (control === undefined) return names.includes(0) ? 0 : (names[0] as Label);
  const wanted = String(control).toLowerCase();
  const found = names.find((name) => String(name).toLowerCase() === wanted);
  return (
    found ?? impossible(`Control is ${control}, which is none of the levels ${names.join(", ")}.`)
  );
}

/** The variance between batches, once levels and blocks are taken out. */
function residual(
  { values, levels, blocks }: BatchMeans<Label>,
  effectOf: Contrasts["effectOf"],
): { degrees: number; variance: number } {
  const byLevel = new Set(levels).size;
  const byBlock = new Groups(blocks);
  const degrees = values.length - byLevel - byBlock.count + 1;
  if (degrees < 1) {
    noAnswer(
      `${values.length} batches of ${byLevel} levels leave nothing to tell how batches vary. Give at least two independent batches a level: more sheets of one batch do not count.`,
    );
  }
  const rest = values.map((value, i) => value - effectOf(levels[i] as Label));
  byBlock.centre(rest);
  const left = sumOfSquares(rest);
  if (left <= ROUNDING * sumOfSquares(values)) {
    noAnswer(
      "The batches of each level agree to the last digit, so that nothing tells how batches vary. Give values as measured, from independent batches.",
    );
  }
  return { degrees, variance: left / degrees };
}

interface Sample {
  readonly count: number;
  readonly mean: number;
  readonly deviation: number | undefined;
}

function sampleOf({ values, levels }: BatchMeans<Label>, level: Label): Sample {
  const own = values.filter((_, i) => levels[i] === level);
  const count = own.length;
  const mean = own.reduce((sum, value) => sum + value, 0) / count;
  const spread = sumOfSquares(own.map((value) => value - mean));
  return { count, mean, deviation: count > 1 ? Math.sqrt(spread / (count - 1)) : undefined };
}
