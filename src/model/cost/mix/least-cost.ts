import { unitCurves } from "../../strength/response";
import { Centring } from "./centring";
import { PrimalDual } from "./primal-dual";
import { Point, type Program } from "./program";

/**
 * What a missing target costs, in units of what it costs to meet: far above any use of an option, so
 * that none of the target is left missing where it can be met; the second is for the last per mille.
 */
const PENALTIES = [1e4, 1e8];
/** Share of the target that may be missing by rounding. */
const MET = 1e-10;
/** The barrier is cut to a tenth until the primal–dual steps take over; they mostly do at once. */
const BARRIER_CUT = 0.1;
const LEAST_BARRIER = 1e-10;

export interface LeastCost {
  /** Use of each option, as a part of its full amount. */
  readonly used: readonly number[];
  /** What each limit, and last the target, is worth: by how much cost falls per unit of relief. */
  readonly multipliers: readonly number[];
}

/**
 * The least cost of a program that can be met; else, or where it cannot be told, undefined. `costUnit`
 * is roughly what meeting the target costs.
 *
 * One more option stands for what is missing, at a penalty: with it every program has room inside, and a
 * target that is out of reach shows as use of it.
 */
export function leastCost(program: Program, costUnit: number): LeastCost | undefined {
  for (const penalty of PENALTIES) {
    const answer = solve(withMissing(program, costUnit, penalty));
    if (answer !== undefined && missing(answer) <= MET) {
      const multipliers = answer.multipliers.map((multiplier) => multiplier * costUnit);
      return { used: answer.used.slice(0, -1), multipliers };
    }
  }
  return undefined;
}

/** The use of most gain, whatever the cost, and the part of the target that it meets, up to 1. */
export function largestGain(
  program: Program,
): { readonly used: readonly number[]; readonly part: number } | undefined {
  const free = { ...program, cost: program.cost.map(() => 0) };
  const answer = solve(withMissing(free, 1, 1));
  return answer && { used: answer.used.slice(0, -1), part: 1 - missing(answer) };
}

function missing({ used }: LeastCost): number {
  return used[used.length - 1] as number;
}

function withMissing(program: Program, costUnit: number, penalty: number): Program {
  const one = (values: readonly number[], last: number) => [...values, last];
  return {
    cost: one(
      program.cost.map((cost) => cost / costUnit),
      penalty,
    ),
    gain: one(program.gain, 1),
    stretch: one(program.stretch, 1),
    curve: [...program.curve, unitCurves.straight],
    use: program.use.map((use) => one(use, 0)),
    limit: program.limit,
  };
}

function solve(program: Program): LeastCost | undefined {
  const options = program.cost.length;
  const point = new Point(program);
  let barrier = 1 / options;
  const central = new Array<number>(point.rows.length).fill(barrier);
  central[central.length - 1] = 1;
  const multipliers = new Array<number>(central.length).fill(0);
  const centring = new Centring(point, central);
  const descent = new PrimalDual(point, multipliers);
  for (; barrier > LEAST_BARRIER && centring.centre(barrier); barrier *= BARRIER_CUT) {
    if (descent.descend(barrier, central)) return { used: point.used, multipliers };
  }
  return undefined;
}
