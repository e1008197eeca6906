import type { Vector } from "../vectors";

/** Litres in a cubic metre over grams in a kilogram: turns mg/L × m³/t into kg/t as C·V/1000. */
const MILLIGRAMS_PER_LITRE_PER_KILOGRAM = 1000;

/**
 * Additive that fills every site of each component, qᵢ = mᵢ·sᵢ·Γᵢ in kg per tonne of furnish:
 * kg/kg × m²/g × mg/m² is mg/g, and mg/g is kg/t.
 */
export function filledSites(shares: Vector, surfaces: Vector, capacities: Vector): number[] {
  const filled = new Array<number>(shares.length);
  for (let i = 0; i < filled.length; i++)
    filled[i] = (shares[i] as number) * (surfaces[i] as number) * (capacities[i] as number);
  return filled;
}

/**
 * What one mg/L of dissolved additive amounts to, in kg per tonne of furnish: V/1000 with
 * V = (1−c)/c m³ of water per tonne of solids at consistency c.
 */
export function dissolvedPerConcentration(consistency: number): number {
  return (1 - consistency) / consistency / MILLIGRAMS_PER_LITRE_PER_KILOGRAM;
}
