import type { Label } from "../../model/batches/groups";
import { bandOf } from "../../model/strength/band";
import type { Fit } from "../../model/strength/fit";
import { limitingT } from "../../model/strength/limits";
import { fitMeasured } from "../../model/strength/measured";
import { independentPoints } from "../../model/strength/points";
import { gradient, type Shape } from "../../model/strength/response";
import type { Vector } from "../../model/vectors";
import { difference, product, sum, valued } from "../expression";
import { amount, percent, pictured, short } from "../picture";
import { each, found, line, type Step, type Working } from "../step";
import { residualsOf } from "./fit";
import { fittedCurve } from "./fitted-curve";
import { rise } from "./shapes";

export function band(
  dose: number,
  doses: Vector,
  strengths: Vector,
  shape: Shape,
  knownBase: number | undefined,
  confidence: number,
  batches: ArrayLike<Label> | undefined,
  blocks: ArrayLike<Label> | undefined,
): Working {
  const fitted = fitMeasured(doses, strengths, shape, knownBase, batches, blocks);
  const points = independentPoints(doses, strengths, batches, blocks);
  const { estimate, standardError, lower, upper } = bandOf(fitted, confidence)(dose);
  const { base, plateauGain, scale } = fitted;
  const t = limitingT(fitted, confidence);
  const reach = product(t, standardError);
  const tested = Array.from(points.doses);
  const [lowest, highest] = [Math.min(...tested), Math.max(...tested)];
  const limits = `with ${percent(confidence)} confidence between ${short(lower)} and ${short(upper)}`;
  return {
    says: `At ${amount(dose, "kg/t")} the mean strength is ${amount(estimate, "N·m/g")}, ${limits}.`,
    steps: [
      parameters(fitted),
      leanings(dose, fitted, knownBase),
      found(
        "Standard error of the mean at this dose, from how sure they are together",
        standardError,
        "N·m/g",
      ),
      found(
        `Student's t for ${percent(confidence)}, ${fitted.degreesOfFreedom} degrees of freedom`,
        t,
        "",
      ),
      each("The mean strength at this dose, between its limits", [
        line("lower", valued(difference(estimate, reach), lower), "N·m/g"),
        line(
          "estimate",
          valued(sum(base, product(plateauGain, rise(dose, scale, shape))), estimate),
          "N·m/g",
        ),
        line("upper", valued(sum(estimate, reach), upper), "N·m/g"),
      ]),
    ],
    ...pictured(() => ({
      ...fittedCurve(points, fitted, residualsOf(points, fitted), confidence, dose),
      here: [dose, estimate],
      alt: `The fitted curve at ${amount(dose, "kg/t")}: ${amount(estimate, "N·m/g")}, ${limits}.`,
    })),
    remarks: [
      ...(dose > highest
        ? [
            `Beyond ${amount(highest, "kg/t")}, the highest dose tested: the band holds only if the curve goes on so.`,
          ]
        : []),
      ...(dose < lowest
        ? [
            `Below ${amount(lowest, "kg/t")}, the lowest dose tested: the band holds only if the curve begins so.`,
          ]
        : []),
      `Limits of the mean. Single batches scatter about it with a standard deviation of ${amount(fitted.residualStandardDeviation, "N·m/g")}.`,
    ],
  };
}

const parameters = ({ base, plateauGain, scale, shape }: Fit): Step =>
  each("The curve that fits the points best", [
    line("base", base, "N·m/g"),
    line("gain", plateauGain, shape === "straight" ? "N·m/g per kg/t" : "N·m/g"),
    ...(shape === "straight" ? [] : [line("scale", scale, "kg/t")]),
  ]);

/** What the strength at the dose changes by when a parameter changes by one. */
function leanings(
  dose: number,
  { plateauGain, scale, shape }: Fit,
  knownBase: number | undefined,
): Step {
  const [perBase, perGain, perScale] = gradient(dose, plateauGain, scale, shape);
  return each("How far the strength at this dose follows each", [
    ...(knownBase === undefined ? [line("base", perBase, "N·m/g per N·m/g")] : []),
    line("gain", perGain, shape === "straight" ? "kg/t" : "N·m/g per N·m/g"),
    ...(shape === "straight" ? [] : [line("scale", perScale, "N·m/g per kg/t")]),
  ]);
}
