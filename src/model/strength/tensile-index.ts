/** Standard acceleration of free fall, m/s² (exact by the 3rd General Conference on Weights and Measures, 1901). */
export const STANDARD_GRAVITY = 9.80665;

/**
 * Tensile index I = 1000·S/w in N·m/g from tensile strength S in kN/m and grammage w in g/m².
 * Both belong to the same conditioning: a conditioned force over an oven-dry grammage overstates it.
 *
 * Source: ISO 1924-2, Paper and board — Determination of tensile properties.
 */
export function tensileIndex(strength: number, grammage: number): number {
  return (1000 * strength) / grammage;
}

/**
 * Breaking length in km: the length of a strip that breaks under its own weight, index / g.
 *
 * Source: ISO 1924-2 with standard gravity.
 */
export function breakingLength(index: number): number {
  return index / STANDARD_GRAVITY;
}
