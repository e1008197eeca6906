import { requireEqualLengths, requireWholeFurnish, type Vector } from "../vectors";

/**
 * Dose that fills every site of a furnish, kg/t: Σ mᵢ·sᵢ·Γᵢ with mass shares m, specific surfaces s
 * m²/g and site capacities Γ mg/m² (mg/g is kg/t). More than that cannot be held, whatever the
 * affinity; at equilibrium the sites fill before only in part.
 * Source: Langmuir's plateau, summed over the components.
 */
export function surfaceLimit(shares: Vector, surfaces: Vector, capacities: Vector): number {
  requireEqualLengths({ shares, surfaces, capacities });
  requireWholeFurnish(shares);
  let limit = 0;
  for (let i = 0; i < shares.length; i++) {
    limit += (shares[i] as number) * (surfaces[i] as number) * (capacities[i] as number);
  }
  return limit;
}
