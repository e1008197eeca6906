/** Money; above 0 means that more was spent than the standard. */
export interface Variance {
  readonly price: number;
  readonly usage: number;
  readonly activity: number;
  readonly total: number;
}

/**
 * Why a period cost another sum than budgeted, split in the order of standard costing:
 *
 *   price    (actualPrice − standardPrice)·actualQuantity
 *   usage    (actualQuantity − standardDose·actualOutput)·standardPrice
 *   activity (actualOutput − standardOutput)·standardDose·standardPrice
 *
 * The total is their sum, and telescopes to actualPrice·actualQuantity −
 * standardPrice·standardDose·standardOutput. Price and usage are favourable below 0, adverse above;
 * activity is neither: more paper costs more additive.
 * Source: standard costing (common practice; the split above is complete by algebra).
 */
export function variance(
  standardPrice: number,
  standardDose: number,
  standardOutput: number,
  actualPrice: number,
  actualQuantity: number,
  actualOutput: number,
): Variance {
  return summed(
    (actualPrice - standardPrice) * actualQuantity,
    (actualQuantity - standardDose * actualOutput) * standardPrice,
    (actualOutput - standardOutput) * standardDose * standardPrice,
  );
}

/** The variances of several periods together. */
export function totalVariance(periods: readonly Variance[]): Variance {
  let price = 0;
  let usage = 0;
  let activity = 0;
  for (const period of periods) {
    price += period.price;
    usage += period.usage;
    activity += period.activity;
  }
  return summed(price, usage, activity);
}

/** The total is added up from the parts, so that the parts give it to the last digit. */
function summed(price: number, usage: number, activity: number): Variance {
  return { price, usage, activity, total: price + usage + activity };
}
