/**
 * Treatment cost of the additive that is not retained, money per tonne of furnish:
 * dose·(1 − overallRetention)·factor·treatmentPrice, with `factor` g of COD per g of additive and
 * the price per kg of COD. What was degraded in the loop is counted: it is oxygen demand still.
 * Source: mass balance.
 */
export function effluentCost(
  dose: number,
  overallRetention: number,
  treatmentPrice: number,
  factor: number,
): number {
  return dose * (1 - overallRetention) * factor * treatmentPrice;
}
