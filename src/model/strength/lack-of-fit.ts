import { rankTogether } from "../batches/groups";
import { fisherTail } from "../numerics/fisher-f";
import { sumOfSquares } from "../vectors";
import { roundingOf } from "./goodness";
import type { Points } from "./points";

/**
 * Probability of a misfit at least as large if the curve were right, from the spread of repeated doses:
 * F = [(RSS − SSₚ)/(ν − νₚ)]/[SSₚ/νₚ], where SSₚ is what a free mean for every dose leaves (beside one
 * for every block). None where no dose repeats, or where the curve has a parameter for every dose.
 *
 * Source: Draper & Smith, Applied Regression Analysis (1998), 2.1; Bates & Watts (1988), 1.3.2.
 */
export function lackOfFit(
  points: Points,
  residualSumOfSquares: number,
  degreesOfFreedom: number,
): number | undefined {
  const pureDegrees = points.doses.length - rankTogether(points.repeats, points.blocks);
  const misfitDegrees = degreesOfFreedom - pureDegrees;
  if (pureDegrees === 0 || misfitDegrees <= 0) return undefined;
  const rounding = roundingOf(points.strengths);
  const pureSum = pureError(points, rounding);
  const misfit = residualSumOfSquares - pureSum;
  if (pureSum <= rounding) return misfit > rounding ? 0 : undefined;
  const ratio = Math.max(0, misfit) / misfitDegrees / (pureSum / pureDegrees);
  return fisherTail(ratio, misfitDegrees, pureDegrees);
}

/**
 * The sum of squares beside free means of doses and of blocks: doses are swept out, and the block effects
 * found by conjugate gradients, which end after as many steps as there are blocks.
 *
 * Source: Hestenes & Stiefel, J. Res. Natl. Bur. Stand. 49 (1952) 409, section 10.
 */
function pureError({ strengths, blocks, repeats }: Points, rounding: number): number {
  const residual = Float64Array.from(strengths);
  repeats.centre(residual);
  let pull = blocks.sums(residual);
  let direction = pull;
  let pullSquares = sumOfSquares(pull);
  for (let step = 0; step < blocks.count && pullSquares > rounding; step++) {
    const change = Float64Array.from(blocks.of, (block) => direction[block] as number);
    repeats.centre(change);
    const length = pullSquares / sumOfSquares(change);
    for (let i = 0; i < residual.length; i++) {
      (residual[i] as number) -= length * (change[i] as number);
    }
    pull = blocks.sums(residual);
    const next = sumOfSquares(pull);
    direction = direction.map((d, block) => (pull[block] as number) + (next / pullSquares) * d);
    pullSquares = next;
  }
  return sumOfSquares(residual);
}
