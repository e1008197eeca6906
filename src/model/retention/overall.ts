import { impossible } from "../refusal";
import { oneOrEach, requireEqualLengths, sumOf, type Vector } from "../vectors";
import { overallRetention } from "./loop";

/**
 * Overall retention of an additive that is in several places (on fibre, on fines, dissolved…).
 *
 * Each population loops at its own first-pass retention: R = Σ Aᵢ·R(fᵢ, rᵢ, dᵢ) / Σ Aᵢ. Blending the
 * first-pass retentions before the loop flatters the answer, since R(f) is concave.
 * `recycled` and `degraded` are one number for all populations, or one for each.
 * Limits: a population keeps its place while it goes round.
 * Source: mass balance.
 */
export function overallRetentionOfMixture(
  amounts: Vector,
  firstPass: Vector,
  recycled: Vector,
  degraded: Vector,
): number {
  requireEqualLengths({ amounts, firstPass });
  if (recycled.length !== 1) requireEqualLengths({ amounts, recycled });
  if (degraded.length !== 1) requireEqualLengths({ amounts, degraded });
  const total = sumOf(amounts);
  if (!(total > 0)) impossible("The amounts sum to 0. Give at least one amount above 0.");

  let retained = 0;
  for (let i = 0; i < amounts.length; i++) {
    const amount = amounts[i] as number;
    if (amount === 0) continue;
    retained +=
      amount *
      overallRetention(firstPass[i] as number, oneOrEach(recycled, i), oneOrEach(degraded, i));
  }
  return retained / total;
}
