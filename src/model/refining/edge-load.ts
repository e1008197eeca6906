import { netPower } from "./energy";

/** Seconds in a minute: kW over (1/min · km) is 60 J/m. */
const SECONDS_PER_MINUTE = 60;

/**
 * Specific edge load B = (P − P₀)/(n·L) in J/m: the net energy spent on each metre of crossing bar edge,
 * a measure of how hard the bars strike. Net power in kW, speed n in 1/min, cutting length L of the
 * filling in km per revolution.
 *
 * Source: Brecht & Siewert, Das Papier 20(1) 1966, 4–14 (cited from memory).
 */
export function specificEdgeLoad(
  power: number,
  noLoad: number,
  speed: number,
  cuttingLength: number,
): number {
  return (SECONDS_PER_MINUTE * netPower(power, noLoad)) / (speed * cuttingLength);
}
