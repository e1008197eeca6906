import { sumOf, type Vector } from "../vectors";

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

/** Favourable where less was spent than the standard, adverse where more; nothing where as much. */
export type Mark = "F" | "A" | "";

export function markOf(spentMore: number): Mark {
  if (spentMore === 0) return "";
  return spentMore < 0 ? "F" : "A";
}

export interface Variances {
  /** In order, the first being number 1. */
  readonly periods: readonly (Variance & { readonly number: number })[];
  readonly total: Variance;
}

/** The variances of several periods, and of all together. Vectors of equal length. */
export function variances(
  standardPrices: Vector,
  standardDoses: Vector,
  standardOutputs: Vector,
  actualPrices: Vector,
  actualQuantities: Vector,
  actualOutputs: Vector,
): Variances {
  const periods = Array.from(standardPrices, (standardPrice, i) => ({
    number: i + 1,
    ...variance(
      standardPrice,
      standardDoses[i] as number,
      standardOutputs[i] as number,
      actualPrices[i] as number,
      actualQuantities[i] as number,
      actualOutputs[i] as number,
    ),
  }));
  return { periods, total: totalVariance(periods) };
}

export function totalVariance(periods: readonly Variance[]): Variance {
  const sumOver = (part: "price" | "usage" | "activity") =>
    sumOf(periods.map((period) => period[part]));
  return summed(sumOver("price"), sumOver("usage"), sumOver("activity"));
}

/** The total is added up from the parts, so that the parts give it to the last digit. */
function summed(price: number, usage: number, activity: number): Variance {
  return { price, usage, activity, total: price + usage + activity };
}
