/**
 * Price per kg at which another additive costs the same per unit of effect kept in the sheet.
 *
 * To keep 1 kg, 1/r kg are bought and (1−r)/r kg are lost at `lossPrice` a kg (treatment, mainly):
 * (price + (1−r)·loss)/r for each kg kept. The other keeps rₒ of each kg, each with the effect of
 * `relativeEffect` kg of the first, and loses 1−rₒ at a loss price of its own: equal cost where
 *
 *   other + (1−rₒ)·lossₒ = relativeEffect·rₒ·(price + (1−r)·loss)/r
 *
 * A negative result means that the other would not pay even as a gift, for its loss price.
 * Source: cost balance (derivation above).
 */
export function parityPrice(
  price: number,
  retention: number,
  otherRetention: number,
  lossPrice: number,
  relativeEffect: number,
  otherLossPrice = lossPrice,
): number {
  const perKept = (price + (1 - retention) * lossPrice) / retention;
  return relativeEffect * otherRetention * perKept - (1 - otherRetention) * otherLossPrice;
}
