import { stirlingError } from "./log-gamma";

const LARGEST_STEP = 0.18;
const STEP_PER_WIDTH = 0.55;
const NEGLIGIBLE = 1e-15;

/**
 * The mean of `chance(t·S)` over an estimated standard deviation S whose true value is 1, that is
 * S = √(χ²/ν) with ν degrees of freedom. `chance` lies between 0 and 1; `steepness` is how many of its
 * own widths it crosses when the logarithm of its argument moves by 1.
 *
 * The trapezoidal rule in y = ln S, where density and chance are smooth and die out on both sides, gains
 * digits exponentially. The density is 2·√(a/2π)·e^{−δ(a)}·exp(−a·(e^{2y} − 1 − 2y)), a = ν/2, δ the
 * error of Stirling's formula: no large terms cancel. Terms are left out only once the density itself,
 * which bounds them, is negligible beside the sum, so that tiny means keep their digits too. The nodes lie
 * on one lattice of arguments t·S for every t: a caller who remembers its chances pays for them once.
 *
 * Source: L. N. Trefethen, J. A. C. Weideman, The exponentially convergent trapezoidal rule, SIAM Review
 * 56 (2014) 385–458.
 */
export function overEstimatedDeviation(
  t: number,
  degrees: number,
  chance: (scaled: number) => number,
  steepness = 2,
): number {
  if (degrees === Number.POSITIVE_INFINITY || t === 0) return chance(t);
  const a = degrees / 2;
  const step = Math.min(LARGEST_STEP, STEP_PER_WIDTH / Math.sqrt(2 * degrees + steepness ** 2));
  const centre = Math.round(Math.log(t) / step);
  let sum = 0;
  for (const [from, direction] of [
    [centre, 1],
    [centre - 1, -1],
  ] as const) {
    for (let k = from; ; k += direction) {
      const y = k * step - Math.log(t);
      const density = Math.exp(-a * (Math.expm1(2 * y) - 2 * y));
      if (density <= NEGLIGIBLE * sum) break;
      sum += density * chance(Math.exp(k * step));
    }
  }
  return sum * step * Math.sqrt((2 * a) / Math.PI) * Math.exp(-stirlingError(a));
}
