import { firstPassRetention } from "./first-pass";

/**
 * First-pass retention of one component (ash, fines): the balance of `firstPassRetention` with the
 * consistency of that component alone, which is the total consistency times the share of the
 * component in those solids.
 */
export function componentRetention(
  headbox: number,
  headboxShare: number,
  whiteWater: number,
  whiteWaterShare: number,
  flowRatio: number,
): number {
  return firstPassRetention(headbox * headboxShare, whiteWater * whiteWaterShare, flowRatio);
}
