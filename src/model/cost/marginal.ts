import { figure } from "../figure";
import { noAnswer } from "../refusal";
import { type Shape, slope } from "../strength/response";

/**
 * What the next N·m/g costs at this dose, per tonne of furnish: price/(dS/dx). On a saturating
 * response it rises with the dose and is above the average cost of the gain so far.
 * Source: derivative of the response (derivation in strength/response).
 */
export function marginalCost(
  dose: number,
  price: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
): number {
  const gainOfNext = slope(dose, plateauGain, scale, shape);
  const cost = price / gainOfNext;
  if (!(gainOfNext > 0 && Number.isFinite(cost))) {
    noAnswer(
      `At a dose of ${figure(dose)} kg/t the response no longer rises, so no further N·m/g can be bought. Give a lower dose.`,
    );
  }
  return cost;
}
