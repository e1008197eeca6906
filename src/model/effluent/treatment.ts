import { figureBeside } from "../figure";
import { impossible } from "../refusal";

/** kg of nutrient per kg of BOD removed, BOD : N : P = 100 : 5 : 1 (common practice, no source). */
export const NITROGEN_PER_BOD = 0.05;
export const PHOSPHORUS_PER_BOD = 0.01;

/** Money per kWh, per kg of dry sludge, per kg of nitrogen and per kg of phosphorus. */
export interface TreatmentPrices {
  readonly power: number;
  readonly sludge: number;
  readonly nitrogen: number;
  readonly phosphorus: number;
}

export interface PlantFigures {
  /** kg O₂ per kg BOD. */
  readonly oxygenPerBod: number;
  /** kg O₂ transferred per kWh, in the field. */
  readonly aeration: number;
  /** kg of dry sludge per kg BOD. */
  readonly sludgeYield: number;
}

/** What a day of aerobic treatment takes and costs: kg/d, kWh/d and money/d. */
export interface Treatment {
  readonly oxygen: number;
  readonly aerationPower: number;
  readonly sludge: number;
  readonly nitrogen: number;
  readonly phosphorus: number;
  readonly powerCost: number;
  readonly sludgeCost: number;
  readonly nitrogenCost: number;
  readonly phosphorusCost: number;
  readonly totalCost: number;
  /** BOD/COD, kg/kg: how much of the load an aerobic plant can take hold of. None without a load. */
  readonly treatableShare: number | undefined;
}

/**
 * Aerobic biological treatment of a load of `cod` and `bod` kg/d. Oxygen, sludge and nutrients go by
 * the BOD; the COD shows how much of the load the plant can take hold of.
 * Limits: aerobic, all BOD removed, no nitrification, no nutrients in the water already.
 * Source: proportions of practice; each can be replaced by the plant's own figure.
 */
export function aerobicTreatment(
  cod: number,
  bod: number,
  prices: TreatmentPrices,
  plant: PlantFigures,
): Treatment {
  if (bod > cod) {
    impossible(
      `The BOD is ${figureBeside(bod, cod)} kg/d and the COD ${figureBeside(cod, bod)} kg/d. BOD cannot be above COD: give COD first.`,
    );
  }
  const oxygen = bod * plant.oxygenPerBod;
  const aerationPower = oxygen / plant.aeration;
  const sludge = bod * plant.sludgeYield;
  const nitrogen = bod * NITROGEN_PER_BOD;
  const phosphorus = bod * PHOSPHORUS_PER_BOD;
  const powerCost = aerationPower * prices.power;
  const sludgeCost = sludge * prices.sludge;
  const nitrogenCost = nitrogen * prices.nitrogen;
  const phosphorusCost = phosphorus * prices.phosphorus;
  return {
    oxygen,
    aerationPower,
    sludge,
    nitrogen,
    phosphorus,
    powerCost,
    sludgeCost,
    nitrogenCost,
    phosphorusCost,
    totalCost: powerCost + sludgeCost + nitrogenCost + phosphorusCost,
    treatableShare: cod === 0 ? undefined : bod / cod,
  };
}
