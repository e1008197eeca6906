import { figure } from "../figure";
import { root } from "../numerics/root";
import { noAnswer } from "../refusal";
import type { Projection, Projector } from "./projection";
import type { Shape } from "./response";

/**
 * Below this share of the fitted curve a change of the scale cannot be seen: no strength is measured to
 * 0.001 % of the gain. The plausible range of the scale ends where its trace does.
 */
const SMALLEST_TRACE = 1e-5;

/** In ln(scale), counted from the lowest dose above 0 and from the highest: beyond, no trace is left. */
const LOWEST_SCALE: Readonly<Record<Exclude<Shape, "straight">, number>> = {
  exponential: Math.log(1 / 20),
  hyperbolic: Math.log(1e-5),
  peaked: Math.log(1 / 20),
};
const HIGHEST_SCALE = Math.log(1e5);

/**
 * Steps in ln(scale). From a twentieth of the lowest dose to twenty times the highest a curve takes about
 * e-fold to change its form; beyond, it is nearly a step or a line, and no more than one valley is left.
 * A peak that passes through the doses turns the curve over within their range, however narrow.
 */
const NEAR = Math.log(20);
const NEAR_STEP = 0.5;
const FAR_STEP = Math.LN10;
const STEPS_WITHIN_DOSES = 8;

/** Radians between two stops, where the curve is seen as a direction in the space of the points. */
const LARGEST_TURN = 0.3;
const SMALLEST_STEP = 1e-3;

/** Doses that are further apart than this are not of one ladder; the walk would find nothing between them. */
const NARROWEST_RATIO = 1e-9;

interface Stop {
  readonly logScale: number;
  readonly projection: Projection;
}

/**
 * The scale with the least sum of squares over the whole plausible range: a walk over ln(scale) brackets
 * the valleys, and each is followed to the last digits by a bracketed root of the Gauss–Newton step. No
 * starting value is needed, and none can mislead. Where the sum of squares still falls at an end of the
 * range no scale is best, and gain and scale cannot be told apart: refused, saying at which end.
 */
export function bestScale(
  { at }: Projector,
  doses: Float64Array,
  shape: Exclude<Shape, "straight">,
): Projection {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = 0;
  for (let i = 0; i < doses.length; i++) {
    const dose = doses[i] as number;
    if (dose > 0 && dose < lowest) lowest = dose;
    if (dose > highest) highest = dose;
  }
  if (lowest < highest * NARROWEST_RATIO) {
    noAnswer(
      `The doses above 0 run from ${figure(lowest)} to ${figure(highest)}. No curve shows over so wide a range: give all doses in one unit.`,
    );
  }
  const inside = (logScale: number) => at(highest * Math.exp(logScale));
  const walk = stopsBetween(inside, Math.log(lowest / highest), LOWEST_SCALE[shape]);
  const [steepEnd, straightEnd] = [walk.at(0)?.projection, walk.at(-1)?.projection];
  if (steepEnd === undefined || straightEnd === undefined) {
    return noAnswer(
      `The doses above 0 run from ${figure(lowest)} to ${figure(highest)}. On doses so close together gain and scale cannot be told apart: spread them wider.`,
    );
  }

  let best =
    steepEnd.residualSumOfSquares < straightEnd.residualSumOfSquares ? steepEnd : straightEnd;
  for (let i = 1; i < walk.length; i++) {
    const [from, to] = [walk[i - 1] as Stop, walk[i] as Stop];
    if (!(from.projection.step > 0 && to.projection.step <= 0)) continue;
    const valley = inside(root((x) => inside(x).step, from.logScale, to.logScale));
    if (valley.residualSumOfSquares <= best.residualSumOfSquares) best = valley;
  }
  if (best === straightEnd) {
    noAnswer(
      "The strengths follow a straight line, or one that bends the other way: gain and scale cannot be told apart. Add higher doses, or choose the shape straight.",
    );
  }
  if (best === steepEnd) {
    noAnswer(
      `The strengths change at the lowest doses only: gain and scale cannot be told apart. Add doses below ${figure(lowest)}, or choose another shape.`,
    );
  }
  return best;
}

/** The fit at stops over the plausible range. Logarithms are relative to the highest dose. */
function stopsBetween(
  inside: (logScale: number) => Projection,
  lowestDose: number,
  lowestScale: number,
): Stop[] {
  const stops: Stop[] = [];
  let last: Stop | undefined;
  const walk = (from: number, to: number, steps: number) => {
    for (let k = 0; k < steps; k++) {
      const logScale = from + (k / steps) * (to - from);
      const stop = { logScale, projection: inside(logScale) };
      if (last !== undefined) turnSlowly(inside, last, stop, stops);
      stops.push(stop);
      last = stop;
    }
  };
  const near = Math.ceil(NEAR / NEAR_STEP);
  const farBelow = lowestDose + lowestScale;
  walk(farBelow, lowestDose - NEAR, Math.ceil((lowestDose - NEAR - farBelow) / FAR_STEP));
  walk(lowestDose - NEAR, lowestDose, near);
  walk(lowestDose, 0, Math.max(STEPS_WITHIN_DOSES, Math.ceil(-lowestDose / NEAR_STEP)));
  walk(0, NEAR, near);
  walk(NEAR, HIGHEST_SCALE, Math.ceil((HIGHEST_SCALE - NEAR) / FAR_STEP));
  return stops.filter(({ projection }) => projection.trace >= SMALLEST_TRACE);
}

/** Adds stops between two where the curve would turn too far: the trace is the speed of its turning. */
function turnSlowly(
  inside: (logScale: number) => Projection,
  from: Stop,
  to: Stop,
  stops: Stop[],
): void {
  const step = to.logScale - from.logScale;
  const turned = step * Math.max(from.projection.trace, to.projection.trace);
  if (!(turned > LARGEST_TURN) || step < SMALLEST_STEP) return;
  const logScale = from.logScale + step / 2;
  const middle = { logScale, projection: inside(logScale) };
  turnSlowly(inside, from, middle, stops);
  stops.push(middle);
  turnSlowly(inside, middle, to, stops);
}
