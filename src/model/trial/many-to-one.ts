import { overEstimatedDeviation } from "../numerics/estimated-deviation";
import { normalCdf, normalDensity } from "../numerics/normal";
import { root } from "../numerics/root";
import { studentQuantile, studentTail } from "../numerics/student-t";

const WIDEST_STEP = 0.5;
const FARTHEST = 38;
const NEGLIGIBLE = 1e-15;

/** The largest of the t values of several treatments, each compared with the same control. */
export interface ManyToOne {
  /** P(max |T| > t) when no treatment differs from the control: the two-sided p of a t value. */
  tail(t: number): number;
  /** t that all |T| stay below with probability 1 − alpha. */
  critical(alpha: number): number;
}

/**
 * Dunnett's two-sided distribution, unequal numbers allowed: `treated` holds the number of independent
 * values of each treatment, `control` that of the control, `degrees` the degrees of freedom of the common
 * variance.
 *
 * All t share the control's mean and the estimated deviation S. Given both (z standard normal), they are
 * independent, so that
 *   P(max |T| > t) = E_S ∫ φ(z)·{1 − Π [1 − Φ(−t·S·√(1+m) + z·√m) − Φ(−t·S·√(1+m) − z·√m)]} dz
 * with m = treated/control. Both integrals are trapezoidal sums that gain digits exponentially. What is
 * summed is the small chance, not its complement, and equal numbers share one factor.
 *
 * Source: C. W. Dunnett, A multiple comparison procedure for comparing several treatments with a control,
 * J. Am. Stat. Assoc. 50 (1955) 1096–1121.
 */
export function manyToOne(treated: readonly number[], control: number, degrees: number): ManyToOne {
  if (treated.length === 1) {
    return {
      tail: (t) => 2 * studentTail(t, degrees),
      critical: (alpha) => -studentQuantile(alpha / 2, degrees),
    };
  }

  const sharing = new Map<number, number>();
  for (const number of treated) sharing.set(number, (sharing.get(number) ?? 0) + 1);
  const groups = [...sharing].map(([number, count]) => {
    const ratio = number / control;
    return { count, stretch: Math.sqrt(1 + ratio), pull: Math.sqrt(ratio) };
  });
  const step = WIDEST_STEP / Math.max(...groups.map((group) => group.stretch));
  const density = Float64Array.from({ length: Math.ceil(FARTHEST / step) }, (_, k) =>
    normalDensity(k * step),
  );

  /** The chance that some |T| exceeds t, given t·S and the control's deviation z. */
  function exceeded(scaled: number, z: number): number {
    let log = 0;
    for (const { count, stretch, pull } of groups) {
      const limit = -scaled * stretch;
      const outside = normalCdf(limit + z * pull) + normalCdf(limit - z * pull);
      log += count * Math.log1p(-Math.min(outside, 1));
    }
    return -Math.expm1(log);
  }

  const remembered = new Map<number, number>();
  function overControl(scaled: number): number {
    const known = remembered.get(scaled);
    if (known !== undefined) return known;
    let sum = ((density[0] as number) * exceeded(scaled, 0)) / 2;
    for (let k = 1; k < density.length; k++) {
      const weight = density[k] as number;
      if (weight <= NEGLIGIBLE * sum) break;
      sum += weight * exceeded(scaled, k * step);
    }
    const chance = Math.min(2 * step * sum, 1);
    remembered.set(scaled, chance);
    return chance;
  }

  const tail = (t: number) => overEstimatedDeviation(t, degrees, overControl);
  return {
    tail,
    critical(alpha) {
      const single = -studentQuantile(alpha / 2, degrees);
      const bonferroni = -studentQuantile(alpha / 2 / treated.length, degrees);
      return root((t) => Math.log(tail(t) / alpha), single, bonferroni, 1e-12);
    },
  };
}
