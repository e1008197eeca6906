import { rankTogether } from "../batches/groups";
import { impossible, noAnswer } from "../refusal";
import { sumOfSquares } from "../vectors";
import { correctedAkaike, roundingOf, rSquared } from "./goodness";
import { lackOfFit } from "./lack-of-fit";
import type { Points } from "./points";
import { type Projection, projector } from "./projection";
import type { Shape } from "./response";
import { bestScale } from "./scale-search";

type Row = readonly [number, number, number];

/** A response fitted to points, with all that its uncertainty needs. */
export interface Fit {
  readonly shape: Shape;
  /** The mean of the blocks' bases, or the base that was given. */
  readonly base: number;
  readonly plateauGain: number;
  readonly scale: number;
  /**
   * An upper triangular root F of the covariance F·Fᵀ of base, gain and scale, in this order: row by row
   * what three independent deviations of size 1 do to each. The row of a parameter that is held is 0.
   */
  readonly covarianceRoot: readonly [base: Row, plateauGain: Row, scale: Row];
  readonly points: number;
  readonly parameters: number;
  readonly degreesOfFreedom: number;
  readonly residualSumOfSquares: number;
  readonly residualStandardDeviation: number;
  readonly rSquared: number | undefined;
  readonly correctedAkaike: number | undefined;
  readonly lackOfFit: number | undefined;
}

/**
 * Least squares of a response to full precision, without starting values. The covariance is
 * s²·(JᵀJ)⁻¹ with s² = RSS/(n − p), in closed form from the projection at the best scale.
 *
 * Source: Bates & Watts, Nonlinear Regression Analysis and Its Applications (1988), chapter 2.
 *
 * @param knownBase holds the base; without it every block has its own
 */
export function fitResponse(points: Points, shape: Shape, knownBase?: number): Fit {
  const count = points.doses.length;
  const bases = knownBase === undefined ? points.blocks.count : 0;
  const parameters = bases + (shape === "straight" ? 1 : 2);
  if (bases === 0 && points.blocks.count > 1) {
    impossible(
      `The known base is ${knownBase}, and blocks are given. Give one of the two: blocks have bases of their own.`,
    );
  }
  refuseTooFew(points, shape, parameters, knownBase);
  refuseBeyondMeasure(sumOfSquares(points.doses) + sumOfSquares(points.strengths));

  const projections = projector(points, shape, knownBase);
  const rounding = roundingOf(points.strengths);
  if (shape !== "straight" && projections.spread <= rounding) refuseNoChange();
  const fitted =
    shape === "straight" ? projections.at(1) : bestScale(projections, points.doses, shape);
  if (shape !== "straight" && fitted.gain ** 2 * fitted.riseSquares <= rounding) refuseNoChange();
  const { base, gain, scale, residualSumOfSquares } = fitted;
  refuseBeyondMeasure(base + gain + scale + residualSumOfSquares);

  const degreesOfFreedom = count - parameters;
  const residualStandardDeviation = Math.sqrt(residualSumOfSquares / degreesOfFreedom);
  return {
    shape,
    base,
    plateauGain: gain,
    scale,
    covarianceRoot: covarianceRoot(points, fitted, shape, residualStandardDeviation, knownBase),
    points: count,
    parameters,
    degreesOfFreedom,
    residualSumOfSquares,
    residualStandardDeviation,
    rSquared: rSquared(points.strengths, residualSumOfSquares),
    correctedAkaike: correctedAkaike(residualSumOfSquares, count, parameters),
    lackOfFit: lackOfFit(points, residualSumOfSquares, degreesOfFreedom),
  };
}

function refuseNoChange(): never {
  noAnswer(
    "The strengths do not change with the dose, so that gain and scale cannot be told apart. Test a wider range of doses.",
  );
}

function refuseBeyondMeasure(number: number): void {
  if (Number.isFinite(number)) return;
  noAnswer("The doses or strengths are too large or too small to fit. Choose units nearer to 1.");
}

function refuseTooFew(
  points: Points,
  shape: Shape,
  parameters: number,
  knownBase: number | undefined,
): void {
  const { doses, blocks, repeats } = points;
  const count = doses.length;
  if (count <= parameters) {
    noAnswer(
      `The number of points is ${count}. A fit of ${parameters} parameters needs at least ${parameters + 1} (sheets of one batch are one point).`,
    );
  }
  const compared =
    knownBase === undefined
      ? rankTogether(repeats, blocks) - blocks.count + 1
      : repeats.count - (doses.includes(0) ? 1 : 0);
  const needed = (knownBase === undefined ? 1 : 0) + (shape === "straight" ? 1 : 2);
  if (compared >= needed) return;
  const where = blocks.count > 1 ? " within the same blocks" : "";
  const above = knownBase === undefined ? "" : " above 0";
  noAnswer(
    `The number of different doses${above}${where} is ${compared}. The shape ${shape} needs at least ${needed}.`,
  );
}

function covarianceRoot(
  { blocks }: Points,
  { gain, scale, riseSquares, acrossSquares, lean, meanRise, meanTurn }: Projection,
  shape: Shape,
  deviation: number,
  knownBase: number | undefined,
): Fit["covarianceRoot"] {
  const free = knownBase === undefined;
  const perRise = deviation / Math.sqrt(riseSquares);
  // A straight response has no scale to vary, and may have no gain to divide by.
  const isScaled = shape !== "straight";
  const perScale = isScaled ? (Math.sign(gain) * deviation) / Math.sqrt(acrossSquares) : 0;
  const own = free
    ? (deviation * Math.sqrt(blocks.sizes.reduce((sum, size) => sum + 1 / size, 0))) / blocks.count
    : 0;
  return [
    [own, -meanRise * perRise, (lean * meanRise - meanTurn) * perScale],
    [0, perRise, -lean * perScale],
    [0, 0, isScaled ? (scale / gain) * perScale : 0],
  ];
}
