import { increase, type Shape, scaleOf, slope } from "../../model/strength/response";
import { product, quotient } from "../expression";
import { amount, type Curves, type Point, pictured, sampled } from "../picture";
import { step, type Working } from "../step";
import { relativeDose, slopeOfRise } from "../strength/shapes";

const UNIT = "money/t per N·m/g";

export function marginal(
  dose: number,
  price: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
): Working {
  const ofNext = quotient(
    product(plateauGain, slopeOfRise(dose, scale, shape)),
    scaleOf(scale, shape),
  );
  const next = quotient(price, ofNext.value);
  const average = (price * dose) / increase(dose, plateauGain, scale, shape);
  const isAverageKnown = dose > 0 && average > 0 && Number.isFinite(average);
  return {
    steps: [
      relativeDose(dose, scale, shape),
      step("Gained by the next kg/t", ofNext, "N·m/g per kg/t"),
      step("Cost of the next N·m/g", next, UNIT),
    ],
    ...pictured(() => costCurves(dose, price, plateauGain, scale, shape, next.value)),
    remarks: [
      ...(isAverageKnown
        ? [
            `The average so far is ${amount(average, UNIT)}; it is the cost of the next that decides whether to add more here.`,
          ]
        : []),
      "Read within the doses that were tested only.",
    ],
  };
}

/** The next unit and the average so far, up to this dose; where no dose is given, over one scale. */
function costCurves(
  dose: number,
  price: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
  next: number,
): Curves {
  const upTo = dose > 0 ? dose : scale;
  const sound = (points: readonly Point[]) =>
    points.filter(([, cost]) => cost > 0 && Number.isFinite(cost));
  return {
    kind: "curves",
    title: "What a unit of strength costs",
    alt: `What a unit of strength costs: ${amount(next, UNIT)} for the next at ${amount(dose, "kg/t")}.`,
    x: { label: "dose", unit: "kg/t" },
    y: { label: "cost of an N·m/g", unit: "money/t" },
    curves: [
      {
        label: "the next",
        points: sound(sampled(0, upTo, (x) => price / slope(x, plateauGain, scale, shape))),
      },
      {
        label: "average",
        points: sound(
          sampled(0, upTo, (x) => (price * x) / increase(x, plateauGain, scale, shape)),
        ),
      },
    ],
    here: [dose, next],
  };
}
