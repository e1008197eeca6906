/**
 * Product as received, kg/t, that brings `dose` kg/t of dry active additive: of the product the
 * share `solids` is dry, and of the solids the share `active` is the additive.
 * Source: mass balance.
 */
export function productDose(dose: number, solids: number, active: number): number {
  return dose / (solids * active);
}
