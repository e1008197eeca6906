/**
 * Additive that is not retained, kg/d: dose·(1 − overallRetention)·production. It leaves the machine
 * whole or degraded; both count.
 * Source: mass balance.
 */
export function additiveLoss(dose: number, overallRetention: number, production: number): number {
  return dose * (1 - overallRetention) * production;
}
