/** The places of the stock line where things join, in the direction of flow. */
export const places = [
  { place: "blend chest", consistency: 0.035 },
  { place: "machine chest", consistency: 0.03 },
  { place: "fan pump", consistency: 0.01 },
] as const;

/** Three orders of addition: at which of the places each joins. Harrow Fen runs the first. */
export const orders = [
  { key: "together", title: "all together", starch: 3, solids: [1, 1, 1] },
  { key: "beforeFiller", title: "before the filler", starch: 2, solids: [1, 1, 3] },
  { key: "fibreFirst", title: "fibre first", starch: 1, solids: [1, 2, 3] },
] as const;
