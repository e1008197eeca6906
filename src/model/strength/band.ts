import type { Fit } from "./fit";
import { type Estimate, limitsBy } from "./limits";
import { gradient, response } from "./response";

/**
 * The mean strength at a dose with its limits of confidence, by the delta method: the variance is
 * gᵀ·Cov·g with g the gradient of the response. With blocks it is the mean over the blocks. It says how
 * sure the curve is, not where the next sheet falls.
 *
 * Source: Bates & Watts, Nonlinear Regression Analysis and Its Applications (1988), 2.3.2.
 */
export function bandOf(fit: Fit, confidence: number): (dose: number) => Estimate {
  const { base, plateauGain, scale, shape } = fit;
  const [ofBase, ofGain, ofScale] = fit.covarianceRoot;
  const limits = limitsBy(fit, confidence);
  return (dose) => {
    const [perBase, perGain, perScale] = gradient(dose, plateauGain, scale, shape);
    const along = (column: 0 | 1 | 2) =>
      perBase * ofBase[column] + perGain * ofGain[column] + perScale * ofScale[column];
    return limits(response(dose, base, plateauGain, scale, shape), [along(0), along(1), along(2)]);
  };
}
