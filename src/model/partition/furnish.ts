import { impossible } from "../refusal";

/** How far mass shares may be from a sum of 1: room for a furnish typed with two decimals. */
const SHARE_TOLERANCE = 0.005;

/** Litres in a cubic metre over grams in a kilogram: turns mg/L × m³/t into kg/t as C·V/1000. */
const MILLIGRAMS_PER_LITRE_PER_KILOGRAM = 1000;

/** Refuses a furnish whose mass shares do not make a whole; returns their sum. */
export function wholeFurnish(shares: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < shares.length; i++) sum += shares[i] as number;
  if (!(Math.abs(sum - 1) <= SHARE_TOLERANCE))
    impossible(
      `The shares sum to ${Number(sum.toPrecision(6))}. Give mass shares that sum to 1 (within ${SHARE_TOLERANCE}).`,
    );
  return sum;
}

/**
 * Additive that fills every site of each component, qᵢ = mᵢ·sᵢ·Γᵢ in kg per tonne of furnish:
 * kg/kg × m²/g × mg/m² is mg/g, and mg/g is kg/t.
 */
export function filledSites(
  shares: ArrayLike<number>,
  surfaces: ArrayLike<number>,
  capacities: ArrayLike<number>,
): number[] {
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
