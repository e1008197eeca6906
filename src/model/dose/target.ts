import { figure } from "../figure";
import { impossible } from "../refusal";

/**
 * Dose that leaves `retained` kg/t in the sheet: retained / overallRetention, from the balance of
 * the closed loop. Limits: the retention belongs to this dose; it falls as surfaces fill, so a large
 * step wants the retention found again at the new dose.
 * Source: mass balance.
 */
export function targetDose(retained: number, overallRetention: number): number {
  if (!(overallRetention > 0)) {
    impossible(
      `The overall retention is ${figure(overallRetention)}. Give a fraction above 0 and up to 1.`,
    );
  }
  return retained / overallRetention;
}
