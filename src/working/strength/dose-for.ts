import { doseFor } from "../../model/strength/dose-for";
import { type Shape, scaleOf } from "../../model/strength/response";
import {
  difference,
  type Expression,
  logarithm,
  negative,
  number,
  product,
  quotient,
  valued,
} from "../expression";
import { amount, percent, pictured } from "../picture";
import { found, type Step, step, type Working } from "../step";
import { curveUpTo, DOSE, reachOf, STRENGTH } from "./curve";

/** From here on a small error of the curve moves the dose far. */
const NEAR_THE_END = 0.9;

export function doseWanted(
  target: number,
  base: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
  highestTried: number | undefined,
): Working {
  const dose = doseFor(target, base, plateauGain, scale, shape, highestTried);
  const wanted = difference(target, base);
  const curve = { base, plateauGain, scale, shape };
  const share = quotient(wanted.value, plateauGain);
  return {
    steps: [
      step("Increase that is wanted", wanted, "N·m/g"),
      ...(wanted.value === 0
        ? [found("The base is the target: no additive is needed", 0, "kg/t")]
        : [
            step("As a part of the gain", share, shape === "straight" ? "kg/t" : "fraction"),
            ...inverseSteps(share.value, dose, scale, shape),
          ]),
    ],
    ...pictured(() => ({
      kind: "curves",
      title: "Where the response meets the target",
      alt: `Where the response meets the target: ${amount(target, "N·m/g")} at ${amount(dose, "kg/t")}.`,
      x: DOSE,
      y: STRENGTH,
      curves: [
        {
          label: shape,
          points: curveUpTo(curve, Math.max(reachOf(curve, dose), highestTried ?? 0)),
        },
      ],
      here: [dose, target],
      level: { label: "target", y: target },
    })),
    remarks: [
      ...(highestTried === undefined
        ? [
            "Nothing here says how far doses were tested: give highestTried, and nothing is read beyond it.",
          ]
        : []),
      ...(shape !== "straight" && share.value > NEAR_THE_END
        ? [
            `This takes ${percent(share.value)} of all that the curve can give: a small error of the curve moves the dose far, and the last N·m/g cost most (COST.MARGINAL).`,
          ]
        : []),
      ...(shape === "peaked" && wanted.value !== 0
        ? [
            `The curve passes the target again beyond its peak at ${amount(scale, "kg/t")}; the lower dose is given.`,
          ]
        : []),
    ],
  };
}

/** From the part of the gain to the dose. */
function inverseSteps(share: number, dose: number, scale: number, shape: Shape): readonly Step[] {
  if (shape === "straight") return [step("Dose", valued(number(share), dose), "kg/t")];
  const perScale = dose / scaleOf(scale, shape);
  const over = "Dose over the scale of the curve";
  const turned: Step =
    shape === "peaked"
      ? found(
          `${over}: the lower of the two at which the curve has risen so far`,
          perScale,
          "times",
        )
      : step(over, valued(INVERSES[shape](share), perScale), "times");
  return [turned, step("Dose", valued(product(scale, perScale), dose), "kg/t")];
}

const INVERSES: Readonly<Record<"exponential" | "hyperbolic", (share: number) => Expression>> = {
  exponential: (share) => negative(logarithm(difference(1, share))),
  hyperbolic: (share) => quotient(share, difference(1, share)),
};
