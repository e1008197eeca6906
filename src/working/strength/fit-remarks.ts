import type { Fit } from "../../model/strength/fit";
import { estimates } from "../../model/strength/limits";
import type { Points } from "../../model/strength/points";
import { amount, percent, short } from "../picture";
import { shownBy } from "./curve";

/** Below this part of the gain its end is guessed rather than seen. */
const WELL_SHOWN = 0.8;
/** Shapes nearer than this in corrected Akaike can hardly be told apart (Burnham & Anderson 2002, from memory). */
const HARDLY_APART = 2;

/** What to keep in mind with a fit of these very points. */
export function fitRemarks(
  points: Points,
  fitted: Fit,
  shapes: readonly Fit[],
  isEachItsOwn: boolean,
  knownBase: number | undefined,
): readonly string[] {
  const { shape, scale, lackOfFit } = fitted;
  const highest = points.doses.reduce((most, dose) => Math.max(most, dose), 0);
  const { lower, upper } = estimates(fitted, 0.95).plateauGain;
  const shown = shownBy(fitted, highest);
  const remarks: string[] = [];
  if (lower <= 0 && upper >= 0) {
    remarks.push("The limits of the gain hold 0: these points show no effect of the additive.");
  }
  if (shown < WELL_SHOWN) {
    remarks.push(
      shape === "peaked"
        ? `The peak at ${amount(scale, "kg/t")} lies beyond the highest dose tested, ${amount(highest, "kg/t")}: it is guessed, not seen.`
        : `The highest dose tested, ${amount(highest, "kg/t")}, shows ${percent(shown)} of the gain: its end is guessed, not seen.`,
    );
  }
  if (knownBase === undefined && !points.doses.includes(0)) {
    remarks.push("There is no blank (0) among the doses: the base is read off the curve.");
  }
  if (lackOfFit !== undefined && lackOfFit < 0.05) {
    remarks.push(
      `The points lie off this shape by more than repeated doses vary (lack-of-fit p ${short(lackOfFit)}): try another, or "best".`,
    );
  }
  if (isEachItsOwn && points.repeats.count < points.doses.length) {
    remarks.push(
      "Every value counts as a batch of its own. Where sheets of one batch stand here, give their batches: counted as replicates they make the limits too narrow.",
    );
  }
  const rivals = rivalsOf(fitted, shapes);
  if (rivals.length > 0) {
    remarks.push(`Hardly worse, and as good a guess beyond the points: ${rivals.join(", ")}.`);
  }
  remarks.push(`Read the curve up to ${amount(highest, "kg/t")}, the highest dose tested.`);
  return remarks;
}

function rivalsOf(best: Fit, shapes: readonly Fit[]): readonly string[] {
  const { correctedAkaike } = best;
  if (correctedAkaike === undefined) return [];
  return shapes
    .filter((one) => one.shape !== best.shape && one.correctedAkaike !== undefined)
    .filter((one) => (one.correctedAkaike as number) - correctedAkaike < HARDLY_APART)
    .map(({ shape }) => shape);
}
