import { batchMeans } from "../../model/batches/batch-means";
import type { Label } from "../../model/batches/groups";
import { fitEachShape } from "../../model/strength/best-shape";
import type { Fit } from "../../model/strength/fit";
import { fittedAt } from "../../model/strength/fitted";
import { type Estimate, estimates, limitingT } from "../../model/strength/limits";
import { fitMeasured } from "../../model/strength/measured";
import { independentPoints, type Points } from "../../model/strength/points";
import type { Shape } from "../../model/strength/response";
import type { Vector } from "../../model/vectors";
import { difference, power, quotient, squareRoot, sum, valued } from "../expression";
import { amount, pictured, short } from "../picture";
import { found, type Step, step, type Value, type Working } from "../step";
import { fitRemarks } from "./fit-remarks";
import { fittedCurve } from "./fitted-curve";

const CONFIDENCE = 0.95;

export function fit(
  doses: Vector,
  strengths: Vector,
  shape: Shape | "best",
  knownBase: number | undefined,
  batches: ArrayLike<Label> | undefined,
  blocks: ArrayLike<Label> | undefined,
): Working {
  const fitted = fitMeasured(doses, strengths, shape, knownBase, batches, blocks);
  const points = independentPoints(doses, strengths, batches, blocks);
  const shapes = shape === "best" ? fitEachShape(points, knownBase) : [fitted];
  const residuals = residualsOf(points, fitted);
  const { points: count, parameters, residualSumOfSquares } = fitted;
  const labels = blocks && batchMeans(doses, strengths, blocks, batches).blocks;
  return {
    says: inWords(fitted),
    steps: [
      ...(shape === "best" ? [shapesCompared(shapes)] : []),
      ...(fitted.shape === "straight"
        ? []
        : [
            found(
              "Scale with the least sum of squares, of all that the doses can show; base and gain follow from it",
              fitted.scale,
              "kg/t",
            ),
          ]),
      pointTable(points, residuals, labels),
      step(
        "Sum of the squares of the differences",
        valued(
          sum(...Array.from(residuals, (residual) => power(residual, 2))),
          residualSumOfSquares,
        ),
        "",
      ),
      step(
        "Residual standard deviation, over points less parameters",
        valued(
          squareRoot(quotient(residualSumOfSquares, difference(count, parameters))),
          fitted.residualStandardDeviation,
        ),
        "N·m/g",
      ),
      found(
        `Student's t for limits of 95 %, ${fitted.degreesOfFreedom} degrees of freedom: limits are estimate ± t · standard error`,
        limitingT(fitted, CONFIDENCE),
        "",
      ),
      answer(fitted),
    ],
    ...pictured(() => fittedCurve(points, fitted, residuals, CONFIDENCE)),
    remarks: fitRemarks(points, fitted, shapes, batches === undefined, knownBase),
  };
}

function inWords(fitted: Fit): string {
  const { base, plateauGain, scale } = estimates(fitted, CONFIDENCE);
  const isStraight = fitted.shape === "straight";
  const unit = isStraight ? "N·m/g per kg/t" : "N·m/g";
  const gain = `${amount(plateauGain.estimate, unit)} (limits of 95 %: ${short(plateauGain.lower)} to ${short(plateauGain.upper)})`;
  const end = isStraight ? "" : `, on a scale of ${amount(scale.estimate, "kg/t")}`;
  return `Of the shape “${fitted.shape}”: a base of ${amount(base.estimate, "N·m/g")} and a gain of ${gain}${end}.`;
}

/** What each point lies above the fitted curve of its block. */
export const residualsOf = (points: Points, fitted: Fit): Float64Array => {
  const curve = fittedAt(points, fitted);
  return points.strengths.map((strength, i) => strength - (curve[i] as number));
};

function pointTable(
  { doses, strengths }: Points,
  residuals: Float64Array,
  blocks: readonly Label[] | undefined,
): Step {
  return {
    kind: "table",
    what: "The points, one a batch, beside the fitted curve",
    columns: [
      "dose",
      ...(blocks === undefined ? [] : ["block"]),
      "strength",
      "fitted",
      "difference",
    ],
    rows: Array.from(doses, (dose, i) => [
      dose,
      ...(blocks === undefined ? [] : [blocks[i] as Label]),
      strengths[i] as number,
      (strengths[i] as number) - (residuals[i] as number),
      residuals[i] as number,
    ]),
  };
}

const shapesCompared = (fits: readonly Fit[]): Step => ({
  kind: "table",
  what: "The shapes that the points can tell; the least corrected Akaike is taken",
  columns: ["shape", "residual standard deviation", "corrected Akaike"],
  rows: fits.map(({ shape, residualStandardDeviation, correctedAkaike }) => [
    shape,
    residualStandardDeviation,
    correctedAkaike ?? "#N/A",
  ]),
});

function answer(fitted: Fit): Step {
  const { base, plateauGain, scale } = estimates(fitted, CONFIDENCE);
  return {
    kind: "table",
    what: "The fit",
    columns: ["parameter", "estimate", "standard error", "lower", "upper"],
    rows: [
      estimated("base", base),
      estimated("gain", plateauGain),
      estimated("scale", scale),
      single("residual standard deviation", fitted.residualStandardDeviation),
      single("R²", fitted.rSquared ?? ""),
      single("points", fitted.points),
      single("corrected Akaike", fitted.correctedAkaike ?? "#N/A"),
      single("lack-of-fit p", fitted.lackOfFit ?? ""),
      single("shape", fitted.shape),
    ],
  };
}

const estimated = (
  name: string,
  { estimate, standardError, lower, upper }: Estimate,
): readonly Value[] => [name, estimate, standardError, lower, upper];

const single = (name: string, value: Value): readonly Value[] => [name, value, "", "", ""];
