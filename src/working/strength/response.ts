import type { Shape } from "../../model/strength/response";
import { product, sum } from "../expression";
import { amount, percent, pictured } from "../picture";
import { step, type Working } from "../step";
import { curveUpTo, DOSE, limitLine, reachOf, STRENGTH } from "./curve";
import { relativeDose, rise } from "./shapes";

export function responded(
  dose: number,
  base: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
): Working {
  const risen = rise(dose, scale, shape);
  const gained = product(plateauGain, risen.value);
  const strength = sum(base, gained.value);
  const curve = { base, plateauGain, scale, shape };
  const reach = reachOf(curve, dose);
  return {
    steps: [
      relativeDose(dose, scale, shape),
      ...(shape === "straight"
        ? []
        : [step("Part of the gain that is reached", risen, "fraction")]),
      step("Increase at this dose", gained, "N·m/g"),
      step("Strength", strength, "N·m/g"),
    ],
    ...pictured(() => ({
      kind: "curves",
      title: "The response",
      alt: `The response: ${amount(strength.value, "N·m/g")} at ${amount(dose, "kg/t")}, from a base of ${amount(base, "N·m/g")}.`,
      x: DOSE,
      y: STRENGTH,
      curves: [{ label: shape, points: curveUpTo(curve, reach) }],
      here: [dose, strength.value],
      ...limitLine(curve, reach),
    })),
    remarks: [
      ...(shape === "straight"
        ? ["A straight response has no end: nothing in it says where it stops being true."]
        : [
            `The increase is ${percent(risen.value)} of the gain of ${amount(plateauGain, "N·m/g")} that the curve reaches ${shape === "peaked" ? "at its peak" : "in the end"}: it is the increase that a cost goes by.`,
          ]),
      ...(shape === "peaked" && dose > scale
        ? [`Beyond the peak at ${amount(scale, "kg/t")}: a lower dose does as much.`]
        : []),
      "Read a curve within the doses that were tested only.",
    ],
  };
}
