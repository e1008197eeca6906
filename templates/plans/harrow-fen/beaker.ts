/** A separated beaker test at 6 kg/t on a longer-fibred stock; rows in the order of the furnish. */
export const beaker = {
  shares: [0.7, 0.2, 0.1],
  /** mg per gram of the stock. */
  found: [1.1, 3.4, 1.3],
} as const;

/** Speed of uptake on each component, L/(mg·s): outer surfaces in seconds. */
export const rates = [0.0006, 0.002, 0.003] as const;
