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
  return (dose * throughput) / (strength * density);
}
