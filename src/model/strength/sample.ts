import { normalQuantile } from "../numerics/normal";
import { Random, STREAM } from "../numerics/random";
import { stratified } from "../numerics/stratified";
import type { Fit } from "./fit";

export interface SampledCurve {
  readonly base: number;
  readonly plateauGain: number;
  readonly scale: number;
}

/**
 * Curves drawn from the joint distribution of a fit: mean and covariance are those of the fit exactly, so
 * that gain and scale stay tied to each other.
 *
 * Base and gain are normal about a line on the scale. The scale itself is lognormal, since a normal one
 * would now and then fall to 0 or below, where no curve exists; the two agree where the scale is well
 * known. The draws are stratified. With few degrees of freedom the limits of the fit, which use Student's
 * t, are wider than the spread of the draws.
 *
 * Source: a triangular root of the covariance times independent deviations, as in Gentle, Random Number
 * Generation and Monte Carlo Methods (2003); the lognormal by matching its first two moments.
 */
export function sampleCurves(fit: Fit, count: number, seed: number): SampledCurve[] {
  const random = new Random(seed, STREAM.fittedCurves);
  const [forBase, forGain, forScale] = [1, 2, 3].map(() =>
    stratified(count, random).map(normalQuantile),
  ) as [Float64Array, Float64Array, Float64Array];
  const [[baseOwn, baseWithGain, baseWithScale], [, gainOwn, gainWithScale], [, , scaleOwn]] =
    fit.covarianceRoot;
  const relative = scaleOwn / fit.scale;
  const logDeviation = Math.sqrt(Math.log1p(relative * relative));

  return Array.from({ length: count }, (_, i) => {
    const [z1, z2, z3] = [forBase[i] as number, forGain[i] as number, forScale[i] as number];
    const logRatio = logDeviation * z3 - (logDeviation * logDeviation) / 2;
    const scaleDeviate = relative === 0 ? 0 : Math.expm1(logRatio) / relative;
    return {
      base: fit.base + baseOwn * z1 + baseWithGain * z2 + baseWithScale * scaleDeviate,
      plateauGain: fit.plateauGain + gainOwn * z2 + gainWithScale * scaleDeviate,
      scale: fit.scale * Math.exp(logRatio),
    };
  });
}
