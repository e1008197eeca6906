/** What the other additive is worth a kilogram, each lost kilogram charged by its own oxygen demand. */
export const parityPrice = (
  price: string,
  retention: string,
  otherRetention: string,
  relativeEffect: string,
) =>
  `WETEND.COST.PARITY(${price},${retention},${otherRetention},{treatmentPrice}*{codFactor},${relativeEffect},{treatmentPrice}*{otherCodFactor})`;
