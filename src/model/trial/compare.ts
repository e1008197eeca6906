import { type BatchMeans, batchMeans } from "../batches/batch-means";
import { Groups, type Label } from "../batches/groups";
import { impossible, noAnswer } from "../refusal";
import { requireCompleteBlocks } from "./complete-blocks";
import { type ManyToOne, manyToOne } from "./many-to-one";

/** A level of the trial beside the control. The control itself has nothing to differ from. */
export interface ComparedLevel {
  readonly level: Label;
  readonly batches: number;
  readonly mean: number;
  /** Standard deviation of the batch means as they are; undefined with a single batch. */
  readonly deviation: number | undefined;
  readonly against: Difference | undefined;
}

export interface Difference {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  readonly p: number;
}

export interface Comparison {
  readonly levels: readonly ComparedLevel[];
  readonly control: Label;
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
 * by the additive model value = level + block.
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
  requireCompleteBlocks(means);

  const { degrees, variance } = residual(means);
  const samples = new Map(names.map((name) => [name, sampleOf(means, name)]));
  const base = samples.get(reference) as Sample;
  const treated = names.filter((name) => name !== reference);
  const distribution = manyToOne(
    treated.map((name) => (samples.get(name) as Sample).count),
    base.count,
    degrees,
  );
  const critical = distribution.critical(alpha);
  const compared = names.map((level) => {
    const sample = samples.get(level) as Sample;
    const { count: batches, mean, deviation } = sample;
    const against =
      level === reference ? undefined : difference(sample, base, variance, distribution, critical);
    return { level, batches, mean, deviation, against };
  });
  const deviation = Math.sqrt(variance);
  return { levels: compared, control: reference, deviation, degrees, critical };
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
function residual({ values, levels, blocks }: BatchMeans<Label>): {
  degrees: number;
  variance: number;
} {
  const byLevel = new Groups(levels);
  const byBlock = new Groups(blocks);
  const degrees = values.length - byLevel.count - byBlock.count + 1;
  if (degrees < 1) {
    noAnswer(
      `${values.length} batches of ${byLevel.count} levels leave nothing to tell how batches vary. Give at least two independent batches a level: more sheets of one batch do not count.`,
    );
  }
  const rest = Float64Array.from(values);
  byLevel.centre(rest);
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

function difference(
  sample: Sample,
  base: Sample,
  variance: number,
  distribution: ManyToOne,
  critical: number,
): Difference {
  const estimate = sample.mean - base.mean;
  const error = Math.sqrt(variance * (1 / sample.count + 1 / base.count));
  return {
    estimate,
    lower: estimate - critical * error,
    upper: estimate + critical * error,
    p: distribution.tail(Math.abs(estimate) / error),
  };
}

function sumOfSquares(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
