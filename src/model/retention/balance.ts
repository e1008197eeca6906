import { headboxLoading } from "./loop";

/** Where a steady dose ends up, each part in the unit of the dose; `overallRetention` is a fraction. */
export interface LoopBalance {
  /** What passes the headbox: the fresh dose and what comes round. */
  readonly headboxLoad: number;
  readonly retained: number;
  readonly toSewer: number;
  readonly degraded: number;
  readonly overallRetention: number;
}

/**
 * The loop of `overallRetention` as a balance. With headbox load L = dose/(1 − q): f·L stays in the
 * sheet, (1−f)·L does not; of that the share 1 − r leaves to the sewer and r·d is destroyed.
 * Retained, sewer and degraded close on the dose.
 */
export function loopBalance(
  dose: number,
  firstPass: number,
  recycled: number,
  degraded: number,
): LoopBalance {
  const loading = headboxLoading(firstPass, recycled, degraded);
  const headboxLoad = dose * loading;
  const unretained = headboxLoad * (1 - firstPass);
  return {
    headboxLoad,
    retained: headboxLoad * firstPass,
    toSewer: unretained * (1 - recycled),
    degraded: unretained * recycled * degraded,
    overallRetention: firstPass * loading,
  };
}
