import { noAnswer, Refusal } from "../refusal";
import { type Fit, fitResponse } from "./fit";
import { correctedAkaike, roundingOf } from "./goodness";
import type { Points } from "./points";
import { shapes } from "./response";

/** Fewer points would let the penalty choose, not the data. */
const FEWEST_POINTS = 6;

/** Points beyond the parameters that corrected Akaike needs. */
const SPARE_POINTS = 3;

/**
 * The shape with the least corrected Akaike; shapes that the points cannot tell are left out. It says which
 * curve describes the points with the fewest parameters, not which mechanism made them.
 *
 * Source: Hurvich & Tsai, Biometrika 76 (1989) 297–307.
 */
export function fitBestShape(points: Points, knownBase?: number): Fit {
  const mostParameters = 2 + (knownBase === undefined ? points.blocks.count : 0);
  const needed = Math.max(FEWEST_POINTS, mostParameters + SPARE_POINTS);
  const count = points.doses.length;
  if (count < needed) {
    noAnswer(
      `The number of points is ${count}. Give at least ${needed} to let shape be "best" (sheets of one batch are one point), or name a shape.`,
    );
  }
  const fits = fitEachShape(points, knownBase);
  // Where several shapes fit to the last digit, rounding may not choose.
  const rounding = roundingOf(points.strengths);
  const cost = (fit: Fit) =>
    correctedAkaike(Math.max(fit.residualSumOfSquares, rounding), count, fit.parameters) as number;
  return fits.reduce((best, fit) => (cost(fit) < cost(best) ? fit : best));
}

/** The fits of the shapes that the points can tell. */
export function fitEachShape(points: Points, knownBase?: number): Fit[] {
  const fits: Fit[] = [];
  for (const shape of shapes) {
    try {
      fits.push(fitResponse(points, shape, knownBase));
    } catch (refusal) {
      if (!(refusal instanceof Refusal) || shape === "straight") throw refusal;
    }
  }
  return fits;
}
