import { figureBeside } from "../figure";
import { impossible } from "../refusal";

/** What goes into a make-down vessel. */
export interface MakeDown {
  readonly productGrams: number;
  readonly waterGrams: number;
}

/** Product as received and water for a volume of solution of a wanted strength. Source: mass balance. */
export function makeDown(
  volume: number,
  strength: number,
  solids: number,
  active: number,
  density: number,
): MakeDown {
  const activePart = solids * active;
  if (strength > activePart) {
    impossible(
      `Strength is ${figureBeside(strength, activePart)}, and the product as received holds ${figureBeside(activePart, strength)} of dry active additive. Give a strength up to that.`,
    );
  }
  const solutionGrams = 1000 * volume * density;
  const productGrams = (solutionGrams * strength) / activePart;
  return { productGrams, waterGrams: solutionGrams - productGrams };
}
