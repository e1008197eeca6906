import { figure } from "../figure";
import { impossible, noAnswer } from "../refusal";

const MG_PER_L_IN_KG_PER_M3 = 1000;

/**
 * Dissolved additive in the white water, mg/L, from a constant load into a well-mixed loop.
 *
 * V·dC/dt = load − (Q + k·V)·C, with purge Q m³/h, decay k 1/h, volume V m³. Steady state
 * C∞ = load/(Q + k·V). From clean water, after t hours, C = C∞·(1 − e^(−x)), x = (Q/V + k)·t,
 * computed as (load·t/V)·(1 − e^(−x))/x, which also holds where nothing leaves (x = 0).
 * Without `hours` the answer is the steady state.
 * Limits: one mixed volume, load and purge constant, decay of first order.
 * Source: balance of a stirred tank (derivation above).
 */
export function whiteWaterConcentration(
  load: number,
  purge: number,
  volume: number | undefined,
  hours: number | undefined,
  decay: number,
): number {
  if (volume === undefined) {
    if (hours !== undefined) refuseWithoutVolume(`The hours are ${figure(hours)}`);
    if (decay !== 0) refuseWithoutVolume(`The decay is ${figure(decay)}`);
  } else if (hours !== undefined) {
    const x = (purge / volume + decay) * hours;
    const approach = x === 0 ? 1 : -Math.expm1(-x) / x;
    return ((MG_PER_L_IN_KG_PER_M3 * load * hours) / volume) * approach;
  }
  const clearance = purge + decay * (volume ?? 0);
  if (!(clearance > 0)) {
    noAnswer(
      "The purge is 0 and nothing decays, so the white water never becomes steady. " +
        "Give a purge above 0 m³/h, a decay with the volume, or the hours with the volume.",
    );
  }
  return (MG_PER_L_IN_KG_PER_M3 * load) / clearance;
}

function refuseWithoutVolume(given: string): never {
  impossible(`${given} without a volume. Give the volume of the loop, above 0 m³.`);
}
