import { figureBeside } from "../figure";
import { noAnswer } from "../refusal";

/**
 * Largest dose, kg/t, that keeps the discharge within its limit.
 *
 * A plant that removes the share ρ lets through (background + dose·(1−R)·production·factor)·(1−ρ);
 * this may reach limit·(1 − margin). Background is the raw load of everything else in that water,
 * kg/d, before the plant, as the additive's own load is.
 * Limits: the plant removes the same share of both.
 * Source: mass balance.
 */
export function largestDoseWithin(
  limit: number,
  background: number,
  overallRetention: number,
  production: number,
  factor: number,
  removal: number,
  margin: number,
): number {
  const loadPerDose = (1 - overallRetention) * production * factor;
  if (!(loadPerDose > 0)) {
    const [cause, mend] =
      overallRetention === 1
        ? ["The overall retention is 1", "an overall retention below 1"]
        : production === 0
          ? ["The production is 0 or blank", "a production above 0 t/d"]
          : ["The factor is 0 or blank", "a factor above 0 g/g"];
    noAnswer(
      `${cause}, so nothing of the additive leaves and no dose reaches the limit. Give ${mend}.`,
    );
  }
  const rawLimit = (limit * (1 - margin)) / (1 - removal);
  if (background > rawLimit) {
    noAnswer(
      `The background is ${figureBeside(background, rawLimit)} kg/d, above the ${figureBeside(rawLimit, background)} kg/d that the limit ` +
        "leaves before the plant. No dose is within it: lower the background first.",
    );
  }
  return (rawLimit - background) / loadPerDose;
}
