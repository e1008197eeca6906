import { figure } from "../figure";
import { impossible } from "../refusal";

/**
 * Flow of a made-down solution, L/h, that brings `dose` kg/t of dry active additive at `throughput`
 * t/h: each litre weighs `density` kg and holds the mass share `strength` of dry active additive.
 * Source: mass balance.
 */
export function pumpFlow(
  dose: number,
  throughput: number,
  strength: number,
  density: number,
): number {
  const activePerLitre = strength * density;
  if (!(activePerLitre > 0)) {
    impossible(
      `A litre of solution holds ${figure(activePerLitre)} kg of additive. Give strength and density above 0.`,
    );
  }
  return (dose * throughput) / activePerLitre;
}
