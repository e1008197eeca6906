import { incompleteBeta } from "./incomplete-beta";

/**
 * P(F > f) for a ratio of two mean squares with `upper` and `lower` degrees of freedom.
 *
 * Source: Abramowitz & Stegun (1964) 26.6.2.
 */
export function fisherTail(f: number, upper: number, lower: number): number {
  const weighted = upper * f;
  const total = lower + weighted;
  return incompleteBeta(lower / total, lower / 2, upper / 2, weighted / total);
}
