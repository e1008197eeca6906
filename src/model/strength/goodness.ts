import { sumOf, sumOfSquares } from "../vectors";

/** A sum of squares that rounding alone may leave of these values. */
export function roundingOf(values: Float64Array): number {
  return values.length * Number.EPSILON ** 2 * sumOfSquares(values);
}

/** Share of the spread about the mean that a fit explains; none where there is no spread. */
export function rSquared(
  strengths: Float64Array,
  residualSumOfSquares: number,
): number | undefined {
  const mean = sumOf(strengths) / strengths.length;
  const spread = sumOfSquares(strengths.map((strength) => strength - mean));
  return spread > roundingOf(strengths) ? 1 - residualSumOfSquares / spread : undefined;
}

/**
 * Corrected Akaike n·ln(RSS/n) + 2k + 2k(k+1)/(n − k − 1), where k counts the variance beside the
 * parameters of the curve; none with too few points for the correction or nothing left to explain.
 *
 * Source: Hurvich & Tsai, Biometrika 76 (1989) 297–307.
 */
export function correctedAkaike(
  residualSumOfSquares: number,
  points: number,
  parameters: number,
): number | undefined {
  const k = parameters + 1;
  if (points <= k + 1 || residualSumOfSquares === 0) return undefined;
  return (
    points * Math.log(residualSumOfSquares / points) + 2 * k + (2 * k * (k + 1)) / (points - k - 1)
  );
}
