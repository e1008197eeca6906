import { impossible } from "../refusal";
import { requireEqualLengths, type Vector } from "../vectors";

/**
 * Relative affinity of each component per unit of surface, the first component being 1: the inverse
 * of the partition by area. aᵢ = (measuredᵢ / mᵢ·sᵢ) / (measured₁ / m₁·s₁).
 *
 * What was measured may be amounts or shares in any one unit: only ratios enter.
 */
export function relativeAffinities(measured: Vector, masses: Vector, surfaces: Vector): number[] {
  requireEqualLengths({ measured, shares: masses, surfaces });
  const affinities = new Array<number>(measured.length);
  for (let i = 0; i < affinities.length; i++) {
    const area = (masses[i] as number) * (surfaces[i] as number);
    if (!(area > 0)) {
      impossible(
        `The share × surface of component ${i + 1} is 0. Leave out a component that was not in the beaker.`,
      );
    }
    affinities[i] = (measured[i] as number) / area;
  }
  const first = affinities[0] as number;
  if (!(first > 0)) {
    impossible(
      "The measured amount on the first component is 0. Put a component that took some additive first: the others are relative to it.",
    );
  }
  for (let i = 0; i < affinities.length; i++) affinities[i] = (affinities[i] as number) / first;
  return affinities;
}
