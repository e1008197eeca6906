/**
 * What one N·m/g gained costs, per tonne of furnish: (amount·price + otherCost) / increase. The
 * amount is kg/t of additive, or kWh/t of net refining energy: on this scale the two compare.
 *
 * An average from the first kg (or kWh) on. On a saturating response the next N·m/g costs more.
 * Source: definition.
 */
export function costPerGain(
  amount: number,
  price: number,
  increase: number,
  otherCost: number,
): number {
  return (amount * price + otherCost) / increase;
}
