import type { Fit } from "./fit";
import type { Points } from "./points";
import { increase } from "./response";

/** What the fitted curve is at each point: that of the point's own block, where each has its base. */
export function fittedAt({ doses, strengths, blocks }: Points, fit: Fit): Float64Array {
  const gained = doses.map((dose) => increase(dose, fit.plateauGain, fit.scale, fit.shape));
  if (blocks.count === 1) return gained.map((gain) => fit.base + gain);
  const residuals = strengths.map((strength, i) => strength - (gained[i] as number));
  blocks.centre(residuals);
  return strengths.map((strength, i) => strength - (residuals[i] as number));
}
