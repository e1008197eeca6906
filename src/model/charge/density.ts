import { unitMass } from "./substitution";

const MEQ_PER_MOL = 1000;

/**
 * Charge density of cationic starch, meq/g: one charge a quaternary group,
 * 1000·DS/(162.141 + 151.634·DS). Limits and source as `substitutionFromNitrogen`; quaternary groups
 * are charged at every pH of papermaking.
 */
export function chargeDensity(substitution: number): number {
  return (MEQ_PER_MOL * substitution) / unitMass(substitution);
}
