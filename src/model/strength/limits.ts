import { studentQuantile } from "../numerics/student-t";
import type { Fit } from "./fit";

/** A value with its standard error and limits of confidence; what is held has no error. */
export interface Estimate {
  readonly estimate: number;
  readonly standardError: number;
  readonly lower: number;
  readonly upper: number;
}

/** Two-sided limits estimate ± t·(standard error), by Student's t with the fit's degrees of freedom. */
export function limitsBy(
  fit: Fit,
  confidence: number,
): (estimate: number, deviations: readonly number[]) => Estimate {
  const t = limitingT(fit, confidence);
  return (estimate, [a = 0, b = 0, c = 0]) => {
    const standardError = Math.sqrt(a * a + b * b + c * c);
    const reach = t * standardError;
    return { estimate, standardError, lower: estimate - reach, upper: estimate + reach };
  };
}

/** How many standard errors the limits lie from the estimate. */
export function limitingT({ degreesOfFreedom }: Fit, confidence: number): number {
  return -studentQuantile((1 - confidence) / 2, degreesOfFreedom);
}

/** Correlation of gain and scale; none where one of them is certain, or the shape has no scale. */
export function gainScaleCorrelation({ covarianceRoot }: Fit): number | undefined {
  const [, [, ownGain, gainWithScale], [, , ownScale]] = covarianceRoot;
  const gainError = Math.hypot(ownGain, gainWithScale);
  if (gainError === 0 || ownScale === 0) return undefined;
  return (Math.sign(ownScale) * gainWithScale) / gainError;
}

/** Base, gain and scale of a fit with their limits, which are symmetrical by construction. */
export function estimates(
  fit: Fit,
  confidence: number,
): { base: Estimate; plateauGain: Estimate; scale: Estimate } {
  const limits = limitsBy(fit, confidence);
  const [ofBase, ofGain, ofScale] = fit.covarianceRoot;
  return {
    base: limits(fit.base, ofBase),
    plateauGain: limits(fit.plateauGain, ofGain),
    scale: limits(fit.scale, ofScale),
  };
}
