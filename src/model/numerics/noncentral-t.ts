import { overEstimatedDeviation } from "./estimated-deviation";
import { normalCdf } from "./normal";

const LEAST_STEEPNESS = 4;
/** Beyond it the shift drowns any t that a test asks about, and the tail is 1 to the last digit. */
const MOST_STEEPNESS = 2000;

/**
 * P(T > t) for Student's t whose numerator is a normal deviate about `shift`; t is 0 or above.
 *
 * T = (Z + δ)/S exceeds t where Z + δ > t·S: the mean of Φ(δ − t·S) over S.
 *
 * Source: N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 2 (1995), ch. 31.
 */
export function noncentralTail(t: number, degrees: number, shift: number): number {
  const steepness = Math.min(Math.max(Math.abs(shift), LEAST_STEEPNESS), MOST_STEEPNESS);
  return overEstimatedDeviation(t, degrees, (scaled) => normalCdf(shift - scaled), steepness);
}
