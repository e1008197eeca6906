import { impossible } from "../refusal";
import { requireEqualLengths, sumOf, type Vector } from "../vectors";

/**
 * Share of an additive that stays in the sheet in one pass: what each component holds stays or goes
 * with that component, and of the dissolved part the share `carried` stays with the water in the web.
 *
 * R = (Σ Aᵢ·Rᵢ + D·c) / (Σ Aᵢ + D), amounts in any one unit (kg/t from the partition).
 * Limits: nothing lets go between the headbox and the press.
 * Source: mass balance.
 */
export function additiveRetention(
  amounts: Vector,
  retentions: Vector,
  dissolved: number,
  carried: number,
): number {
  requireEqualLengths({ amounts, retentions });
  const total = sumOf(amounts) + dissolved;
  if (!(total > 0)) {
    impossible("The amounts sum to 0. Give the additive on at least one component, or dissolved.");
  }
  let kept = dissolved * carried;
  for (let i = 0; i < amounts.length; i++) {
    kept += (amounts[i] as number) * (retentions[i] as number);
  }
  return kept / total;
}
