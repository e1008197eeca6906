const MINUTES_PER_HOUR = 60;
const GRAMS_PER_TONNE = 1e6;

/**
 * Oven-dry throughput of a paper machine, t/h, from speed m/min, trimmed width m and grammage g/m²
 * as sold: area per hour times grammage, less the moisture.
 * Source: dimensions.
 */
export function machineThroughput(
  speed: number,
  width: number,
  grammage: number,
  moisture: number,
): number {
  return ((speed * width * MINUTES_PER_HOUR * grammage) / GRAMS_PER_TONNE) * (1 - moisture);
}
