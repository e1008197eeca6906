import { bandOf } from "../../model/strength/band";
import type { Fit } from "../../model/strength/fit";
import type { Points } from "../../model/strength/points";
import { amount, type Curves, percent, sampled, short } from "../picture";
import { curveUpTo, DOSE, limitLine, STRENGTH, strengthAt } from "./curve";

/**
 * A fitted curve with its points and the band of its mean, as far as was tested. Points of blocks with
 * bases of their own are drawn where they lie about the curve of the mean block.
 */
export function fittedCurve(
  { doses }: Points,
  fitted: Fit,
  residuals: Float64Array,
  confidence: number,
  upTo = 0,
): Curves {
  const tested = doses.reduce((highest, dose) => Math.max(highest, dose), 0);
  const highest = Math.max(tested, upTo);
  const at = bandOf(fitted, confidence);
  const { shape, base, plateauGain, points } = fitted;
  return {
    kind: "curves",
    title: `The fitted curve with its points and the ${percent(confidence)} band of its mean`,
    alt: `The fitted curve: ${shape}, from a base of ${short(base)} with a gain of ${short(plateauGain)}, through ${points} points up to ${amount(tested, "kg/t")}.`,
    x: DOSE,
    y: STRENGTH,
    curves: [{ label: shape, points: curveUpTo(fitted, highest) }],
    band: sampled(0, highest, (dose) => at(dose).lower).map(
      ([dose, lower]) => [dose, lower, at(dose).upper] as const,
    ),
    measured: Array.from(
      doses,
      (dose, i) => [dose, strengthAt(fitted, dose) + (residuals[i] as number)] as const,
    ),
    ...limitLine(fitted, highest),
  };
}
