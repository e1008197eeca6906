import { noAnswer } from "../refusal";

/**
 * Share of an additive that is in the sheet in the end, white water going round.
 *
 * In each pass the share f stays. Of the rest the share r returns to the headbox, and of that the
 * share d is destroyed on the way, so q = (1−f)·r·(1−d) comes round again. The passes form a
 * geometric series: R = f·(1 + q + q² + …) = f/(1 − q).
 * Limits: steady state; what returns is retained no worse than what is fresh.
 * Source: geometric series (derivation above).
 */
export function overallRetention(firstPass: number, recycled: number, degraded: number): number {
  return firstPass * headboxLoading(firstPass, recycled, degraded);
}

/**
 * How many times the fresh dose the headbox carries once the loop is steady: 1/(1 − q), with what leaves
 * the round added up, 1 − q = f + (1−f)·((1−r) + r·d), so that no digits cancel where little leaves.
 */
export function headboxLoading(firstPass: number, recycled: number, degraded: number): number {
  const leavesTheRound = firstPass + (1 - firstPass) * (1 - recycled + recycled * degraded);
  if (!(leavesTheRound > 0)) {
    noAnswer(
      "First-pass retention is 0, all of it returns and none is degraded, so it builds up without end. " +
        "Give a first-pass retention above 0, a recycled share below 1, or a degraded share above 0.",
    );
  }
  return 1 / leavesTheRound;
}
