/**
 * Dose that leaves `retained` kg/t in the sheet: retained / overallRetention, from the balance of
 * the closed loop. Limits: the retention belongs to this dose; it falls as surfaces fill, so a large
 * step wants the retention found again at the new dose.
 * Source: mass balance.
 */
export function targetDose(retained: number, overallRetention: number): number {
  return retained / overallRetention;
}
