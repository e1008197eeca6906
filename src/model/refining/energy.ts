import { figureBeside } from "../figure";
import { impossible } from "../refusal";

/**
 * Net specific refining energy (P − P₀)/m in kWh/t from motor power P and no-load power P₀ (kW) and
 * oven-dry throughput (t/h). The no-load power turns the rotor in stock without treating fibre.
 *
 * Source: common practice, no source.
 */
export function netSpecificEnergy(power: number, noLoad: number, throughput: number): number {
  return netPower(power, noLoad) / throughput;
}

/** The power that treats fibre, kW. */
export function netPower(power: number, noLoad: number): number {
  if (power < noLoad) {
    impossible(
      `The power is ${figureBeside(power, noLoad)} kW, below the no-load power of ${figureBeside(noLoad, power)} kW. Give the power of the loaded refiner, in kW, and the no-load power measured at the same speed.`,
    );
  }
  return power - noLoad;
}
