import { impossible } from "../refusal";
import { requireEqualLengths, type Vector } from "../vectors";

/**
 * Share of the additive on each component while sites are plenty: by surface and relative affinity.
 *
 * wᵢ = mᵢ·sᵢ·aᵢ / Σ mⱼ·sⱼ·aⱼ. The limit of the Langmuir balance for a dose far below the filled
 * sites, where uptake is in proportion to mᵢ·sᵢ·(Γᵢ/Kᵢ); the affinity stands for Γᵢ/Kᵢ relative
 * to that of the first component (Langmuir, J. Am. Chem. Soc. 40 (1918) 1361). Masses in any one unit.
 */
export function areaPartition(masses: Vector, surfaces: Vector, affinities?: Vector): number[] {
  requireEqualLengths({ shares: masses, surfaces });
  if (affinities !== undefined) requireEqualLengths({ shares: masses, affinities });
  const onEach = new Array<number>(masses.length);
  let total = 0;
  for (let i = 0; i < onEach.length; i++) {
    const pull =
      (masses[i] as number) *
      (surfaces[i] as number) *
      (affinities === undefined ? 1 : (affinities[i] as number));
    onEach[i] = pull;
    total += pull;
  }
  if (!(total > 0)) {
    impossible(
      "The sum of share × surface × affinity is 0. Give at least one component all three above 0.",
    );
  }
  for (let i = 0; i < onEach.length; i++) onEach[i] = (onEach[i] as number) / total;
  return onEach;
}
