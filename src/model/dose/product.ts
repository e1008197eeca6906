import { figure } from "../figure";
import { impossible } from "../refusal";

/**
 * Product as received, kg/t, that brings `dose` kg/t of dry active additive: of the product the
 * share `solids` is dry, and of the solids the share `active` is the additive.
 * Source: mass balance.
 */
export function productDose(dose: number, solids: number, active: number): number {
  const activeShare = solids * active;
  if (!(activeShare > 0)) {
    impossible(
      `The product holds ${figure(activeShare)} of dry active additive. Give solids and active share above 0.`,
    );
  }
  return dose / activeShare;
}
