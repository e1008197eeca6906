import { figure } from "../figure";
import { noncentralTail } from "../numerics/noncentral-t";
import { normalQuantile } from "../numerics/normal";
import { noAnswer } from "../refusal";
import { manyToOne } from "./many-to-one";

/** One treatment among several, each compared with the same control at the same number of batches. */
export interface Plan {
  /** Difference to be shown, in standard deviations between batches. */
  readonly deviations: number;
  /** Chance of a false alarm among all comparisons, two-sided. */
  readonly alpha: number;
  readonly treatments: number;
}

const FEWEST = 2;
const MOST = 100_000;

/**
 * The chance that a treatment which differs is shown to differ, in its true direction, with this many
 * independent batches of every level. The many-to-one critical value keeps the false alarms of all
 * treatments together at alpha; with one treatment it is Student's two-sample test.
 *
 * Source: noncentral t, as in R's power.t.test; C. W. Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096–1121.
 */
export function powerOfBatches(batches: number, plan: Plan): number {
  const { degrees, critical } = plannedTest(batches, plan);
  return noncentralTail(critical, degrees, plan.deviations * Math.sqrt(batches / 2));
}

/** The test that this many batches of every level allow: its degrees of freedom, and the t to pass. */
export function plannedTest(
  batches: number,
  { alpha, treatments }: Pick<Plan, "alpha" | "treatments">,
): { degrees: number; critical: number } {
  const degrees = (treatments + 1) * (batches - 1);
  return { degrees, critical: criticalValue(treatments, alpha, degrees) };
}

function criticalValue(treatments: number, alpha: number, degrees: number): number {
  return manyToOne(new Array(treatments).fill(1), 1, degrees).critical(alpha);
}

/**
 * Independent batches of every level, the control included, that show a difference (a fraction of the
 * mean) with the power asked for, where batches vary by `variation` (a fraction of the mean).
 *
 * Power grows with the number. The normal approximation misses the first whole number that is enough by a
 * few, so that the search walks from there. Two batches are the least that show how batches vary.
 */
export function batchesPerLevel(
  variation: number,
  difference: number,
  power: number,
  alpha: number,
  treatments: number,
): number {
  const plan = { deviations: difference / variation, alpha, treatments };
  const certain = criticalValue(treatments, alpha, Number.POSITIVE_INFINITY);
  const enough = (batches: number) => powerOfBatches(batches, plan) >= power;
  const shift = Math.max(certain + normalQuantile(power), 0);
  const guess = 2 * (shift / plan.deviations) ** 2;
  if (!(guess < 2 * MOST)) tooMany(variation, difference);
  let batches = Math.max(FEWEST, Math.ceil(guess));
  while (batches > FEWEST && enough(batches - 1)) batches--;
  while (batches <= MOST && !enough(batches)) batches++;
  return batches <= MOST ? batches : tooMany(variation, difference);
}

function tooMany(variation: number, difference: number): never {
  noAnswer(
    `A difference of ${figure(difference)} with a variation of ${figure(variation)} takes more than ${MOST} batches a level. Look for a larger difference, or make the batches vary less.`,
  );
}
