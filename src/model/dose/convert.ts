export const DOSE_UNITS = ["kg/t", "kg/t air-dry", "lb/short ton", "fraction", "g/t"] as const;
export type DoseUnit = (typeof DOSE_UNITS)[number];

/** kg/t in one lb/short ton: 0.45359237 kg to 907.18474 kg, a pound being 1/2000 of a short ton. */
const KG_PER_T_IN_LB_PER_SHORT_TON = 0.5;
const KG_PER_T_IN_FRACTION = 1000;
const KG_PER_T_IN_G_PER_T = 0.001;

/**
 * A dose in another unit, by way of kg per tonne oven-dry. A tonne air-dry at moisture w holds
 * 1 − w tonnes oven-dry, so 1 kg/t air-dry is 1/(1 − w) kg/t oven-dry. The trade's air-dry tonne of
 * pulp has w = 0.1 (common practice, no source); paper is drier.
 * Source: definitions of the units; the international pound of 0.45359237 kg.
 */
export function convertDose(value: number, from: DoseUnit, to: DoseUnit, moisture: number): number {
  return (value * inKgPerTonne(from, moisture)) / inKgPerTonne(to, moisture);
}

function inKgPerTonne(unit: DoseUnit, moisture: number): number {
  switch (unit) {
    case "kg/t":
      return 1;
    case "kg/t air-dry":
      return 1 / (1 - moisture);
    case "lb/short ton":
      return KG_PER_T_IN_LB_PER_SHORT_TON;
    case "fraction":
      return KG_PER_T_IN_FRACTION;
    case "g/t":
      return KG_PER_T_IN_G_PER_T;
  }
}
