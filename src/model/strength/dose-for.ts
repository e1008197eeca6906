import { figure, figureBeside } from "../figure";
import { root } from "../numerics/root";
import { noAnswer } from "../refusal";
import { type Shape, unitCurves } from "./response";

/**
 * The dose at which a response reaches a target: the inverse of the response. With
 * f = (target − base)/gain the dose is scale·t, where
 *
 *   exponential t = −ln(1 − f) · hyperbolic t = f/(1 − f) · straight t = f · peaked t·e^(1−t) = f, t ≤ 1
 *
 * A peaked response passes every strength below its peak twice; the lower dose is given. It is found
 * between 0 and the peak by a bracketed search, since t = −W₀(−f/e) has no elementary form.
 *
 * @param highestTried the highest dose that was tested, where nothing beyond it is to be believed
 */
export function doseFor(
  target: number,
  base: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
  highestTried = Number.POSITIVE_INFINITY,
): number {
  const wanted = target - base;
  if (wanted === 0) return 0;
  const share = wanted / plateauGain;
  if (!(share > 0)) {
    noAnswer(
      `The target is ${figure(target)}, and the response leads from its base of ${figure(base)} the other way. Give a target on the side to which the response goes.`,
    );
  }
  // A target typed as base + gain may miss the peak by the rounding of the sum.
  const rounding = (Number.EPSILON * (Math.abs(target) + Math.abs(base))) / Math.abs(plateauGain);
  if (shape === "peaked" ? share > 1 + rounding : shape !== "straight" && share >= 1) {
    const limit = shape === "peaked" ? "above the peak of" : "not below the plateau of";
    noAnswer(
      `A gain of ${figureBeside(wanted, plateauGain)} is ${limit} ${figureBeside(plateauGain, wanted)}. Lower the target or choose another additive.`,
    );
  }
  const dose = inverse[shape](share) * (shape === "straight" ? 1 : scale);
  if (!Number.isFinite(dose)) {
    noAnswer(
      `The dose for a target of ${figure(target)} is beyond every number. Lower the target.`,
    );
  }
  if (dose > highestTried) {
    noAnswer(
      `The dose for a target of ${figure(target)} is ${figureBeside(dose, highestTried)}, beyond the highest dose tried of ${figureBeside(highestTried, dose)}. Lower the target or test higher doses.`,
    );
  }
  return dose;
}

const inverse: Readonly<Record<Shape, (share: number) => number>> = {
  exponential: (share) => -Math.log1p(-share),
  hyperbolic: (share) => share / (1 - share),
  peaked: (share) => (share >= 1 ? 1 : root((t) => unitCurves.peaked.rise(t) - share, 0, 1)),
  straight: (share) => share,
};
