import type { Label } from "../../model/batches/groups";
import { counted } from "../../model/figure";
import { type Estimate, estimates, gainScaleCorrelation } from "../../model/strength/limits";
import { fitMeasured } from "../../model/strength/measured";
import type { Shape } from "../../model/strength/response";
import { sampleCurves } from "../../model/strength/sample";
import type { Vector } from "../../model/vectors";
import { short } from "../picture";
import { found, type Value, type Working } from "../step";

const CONFIDENCE = 0.95;

export function sampled(
  doses: Vector,
  strengths: Vector,
  count: number,
  seed: number,
  shape: Shape,
  knownBase: number | undefined,
  batches: ArrayLike<Label> | undefined,
  blocks: ArrayLike<Label> | undefined,
): Working {
  const fitted = fitMeasured(doses, strengths, shape, knownBase, batches, blocks);
  const { base, plateauGain, scale } = estimates(fitted, CONFIDENCE);
  const correlation = gainScaleCorrelation(fitted);
  const curves = sampleCurves(fitted, count, seed);
  const gains = curves.map((curve) => curve.plateauGain);
  const about = `drawn about ${short(fitted.plateauGain)}, from ${short(gains.reduce((a, b) => Math.min(a, b)))} to ${short(gains.reduce((a, b) => Math.max(a, b)))}`;
  return {
    says: `${counted(count, "curve")}, their gains ${about}.`,
    steps: [
      {
        kind: "table",
        what: "The fit that the curves are drawn about",
        columns: ["parameter", "estimate", "standard error"],
        rows: [estimated("base", base), estimated("gain", plateauGain), estimated("scale", scale)],
      },
      ...(correlation === undefined
        ? []
        : [found("Correlation of gain and scale", correlation, "")]),
      {
        kind: "table",
        what: "The curves, a row each",
        columns: ["base", "gain", "scale"],
        rows: curves.map((curve) => [curve.base, curve.plateauGain, curve.scale]),
      },
    ],
    picture: {
      kind: "distribution",
      title: "The gains of the curves",
      alt: `The gains of the curves: ${count} ${about}.`,
      x: { label: "gain", unit: "N·m/g" },
      values: gains,
      lines: [{ label: "fitted", value: fitted.plateauGain }],
    },
    remarks: [
      "Take base, gain and scale of one row together: drawn apart from each other they would overstate the spread.",
      ...(fitted.degreesOfFreedom < 10
        ? [
            `With ${fitted.degreesOfFreedom} degrees of freedom the limits of STRENGTH.FIT are wider than the spread of these curves.`,
          ]
        : []),
    ],
  };
}

const estimated = (name: string, { estimate, standardError }: Estimate): readonly Value[] => [
  name,
  estimate,
  standardError,
];
