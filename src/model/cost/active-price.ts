/**
 * Price of a kg of dry active additive from an invoice: (price + freight) per kg as received over the
 * dry active additive in it. Of the product the share `solids` is dry, and of that the share `active`
 * is the additive.
 * Source: mass balance.
 */
export function activePrice(
  price: number,
  solids: number,
  active: number,
  freight: number,
): number {
  return (price + freight) / (solids * active);
}
