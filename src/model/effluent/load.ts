import { additiveLoss } from "./loss";

/**
 * Raw load on the effluent, kg/d, before treatment: the additive lost times what a gram of it
 * carries. `factor` is g O₂/g for chemical (COD) or biochemical (BOD) oxygen demand, or the mass
 * share of nitrogen for the nitrogen load.
 * Limits: the factor is the additive's own, measured; what degraded on the way carries the same.
 * Source: mass balance.
 */
export function effluentLoad(
  dose: number,
  overallRetention: number,
  production: number,
  factor: number,
): number {
  return additiveLoss(dose, overallRetention, production) * factor;
}
