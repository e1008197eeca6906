import { GramSchmidt } from "../../numerics/gram-schmidt";
import type { UnitCurve } from "../../strength/response";
import type { Point, Program } from "./program";

/** Newton decrement, in units of the barrier, below which the point is central enough to go on from. */
const CENTRAL = 0.1;
/** Decrement above which a Newton step has to prove that it climbs. */
const DOUBTFUL = 0.3;
const ARMIJO = 1e-4;
const MOST_STEPS = 60;
const MOST_HALVINGS = 50;
const MOST_DOUBLINGS = 12;
/** A multiplier grows at most twenty-fold in one step. */
const LARGEST_RISE = 0.95;
/** Relative step at which an option's response to the prices is settled. */
const SETTLED = 1e-6;

/**
 * Finds a central point to start from: the one that is least in cost − barrier·Σ ln(room) for a given
 * barrier, where `room` runs over all bounds and constraints.
 *
 * Only the multipliers are iterated, one for each constraint. At given multipliers each option stands
 * alone and answers with its own best use, found to full precision whatever its scale; what remains is
 * to maximise a concave function of few multipliers by damped Newton steps, which cannot fail to climb.
 * A multiplier moves as ν/(1 − step/ν): Newton's step for 1/ν, in which the slack of a constraint is
 * linear, and it stays above 0.
 *
 * Source: Lagrangian decomposition of a separable program; damped Newton on a barrier function as in
 * Boyd & Vandenberghe, Convex Optimization (2004), sections 9.5 and 11.3.
 */
export class Centring {
  private readonly gradient: number[];
  private before: readonly number[] = [];
  private readonly step: number[];
  private readonly side: number[];
  private readonly newton: GramSchmidt;
  private readonly stiffness: number[];
  private height = 0;

  constructor(
    private readonly point: Point,
    private readonly multipliers: number[],
  ) {
    const constraints = multipliers.length;
    const options = point.used.length;
    this.gradient = new Array<number>(constraints).fill(0);
    this.step = new Array<number>(constraints).fill(0);
    this.side = new Array<number>(options + constraints).fill(0);
    this.newton = new GramSchmidt(options + constraints, constraints);
    this.stiffness = new Array<number>(options).fill(0);
  }

  /** Whether the centre was found: it exists where all constraints can be met with room to spare. */
  centre(barrier: number): boolean {
    this.respond(barrier);
    for (let steps = 0; steps < MOST_STEPS; steps++) {
      const decrement = this.newtonStep(barrier);
      if (decrement <= CENTRAL * barrier) return true;
      this.before = [...this.multipliers];
      const height = this.height;
      let length = 1;
      this.move(length, barrier);
      if (decrement < DOUBTFUL * barrier) continue;
      for (let halvings = 0; halvings < MOST_HALVINGS; halvings++) {
        if (this.height >= height + ARMIJO * length * decrement) break;
        length /= 2;
        this.move(length, barrier);
      }
      if (length === 1) this.stride(barrier);
    }
    return false;
  }

  /** Where a full step climbs, tries longer ones: a far centre is reached in few strides. */
  private stride(barrier: number): void {
    let length = 1;
    for (let doublings = 0; doublings < MOST_DOUBLINGS; doublings++) {
      const height = this.height;
      this.move(2 * length, barrier);
      if (!(this.height > height)) {
        this.move(length, barrier);
        return;
      }
      length *= 2;
    }
  }

  private move(length: number, barrier: number): void {
    for (let k = 0; k < this.multipliers.length; k++) {
      const old = this.before[k] as number;
      const share = Math.min(LARGEST_RISE, (length * (this.step[k] as number)) / old);
      this.multipliers[k] = old / (1 - share);
    }
    this.respond(barrier);
  }

  /** Each option's best use at the multipliers; the concave function to climb, and its gradient. */
  private respond(barrier: number): void {
    const { point, multipliers } = this;
    const { used, left } = point;
    const { cost } = point.program;
    const worth = multipliers[multipliers.length - 1] as number;
    let height = 0;
    for (let i = 0; i < used.length; i++) {
      const net = point.netCost(i, multipliers);
      const fromNone = bestUse(point.program, i, net, worth, barrier, used[i] as number);
      // Counted from the nearer end, so that neither is lost in rounding.
      used[i] = fromNone > 0 ? fromNone : 1 + fromNone;
      left[i] = fromNone > 0 ? 1 - fromNone : -fromNone;
      height +=
        (cost[i] as number) * (used[i] as number) -
        barrier * (Math.log(used[i] as number) + Math.log(left[i] as number));
    }
    point.evaluate();
    for (let k = 0; k < multipliers.length; k++) {
      const multiplier = multipliers[k] as number;
      const excess = point.excess[k] as number;
      this.gradient[k] = excess + barrier / multiplier;
      height += multiplier * excess + barrier * Math.log(multiplier);
    }
    this.height = height;
  }

  /** Newton's step for the multipliers; returns the decrement, twice the climb that it promises. */
  private newtonStep(barrier: number): number {
    const { point, multipliers, stiffness, side } = this;
    const { used, left, bend, rows } = point;
    const worth = multipliers[multipliers.length - 1] as number;
    const options = used.length;
    for (let i = 0; i < options; i++) {
      const below = used[i] as number;
      const above = left[i] as number;
      stiffness[i] = Math.sqrt(
        worth * (bend[i] as number) + barrier / (below * below) + barrier / (above * above),
      );
    }
    side.fill(0, 0, options);
    for (let k = 0; k < rows.length; k++) {
      const column = this.newton.columns[k] as number[];
      const row = rows[k] as number[];
      for (let i = 0; i < options; i++) column[i] = (row[i] as number) / (stiffness[i] as number);
      const own = Math.sqrt(barrier) / (multipliers[k] as number);
      column.fill(0, options);
      column[options + k] = own;
      side[options + k] = (this.gradient[k] as number) / own;
    }
    this.newton.factorise();
    return this.newton.solve(side, this.step);
  }
}

/**
 * The use y of one option at which net·y − worth·gain(y) − barrier·[ln y + ln(1−y)] is least: y itself
 * if it is below a half, else −(1−y). Newton on the slope times the distance u to the nearer end, which
 * has no pole, kept within a bracket; the function is convex, so the slope changes sign once.
 */
function bestUse(
  { gain, stretch, curve }: Program,
  i: number,
  net: number,
  worth: number,
  barrier: number,
  last: number,
): number {
  const { slope, bend } = curve[i] as UnitCurve;
  const factor = stretch[i] as number;
  const pull = worth * (gain[i] as number) * factor;
  const atHalf = net - pull * slope(factor / 2);
  const sign = atHalf > 0 ? 1 : -1;
  const nearer = sign > 0 ? last : 1 - last;
  const push = Math.abs(atHalf);
  // The answer if the response were straight, unless the last one is at hand on the same side.
  const straight =
    (2 * barrier) / (push + 2 * barrier + Math.sqrt(push * push + 4 * barrier * barrier));
  let low = 0;
  let high = 0.5;
  let u = nearer > 0 && nearer < 0.5 ? nearer : straight;
  for (;;) {
    const t = factor * (sign > 0 ? u : 1 - u);
    const tilt = sign * (net - pull * slope(t)) - barrier / u + barrier / (1 - u);
    if (tilt > 0) high = u;
    else low = u;
    const curvature = -pull * factor * bend(t) + barrier / (u * u) + barrier / ((1 - u) * (1 - u));
    let next = u - (u * tilt) / (tilt + u * curvature);
    if (!(next > low && next < high)) next = low > 0 ? Math.sqrt(low * high) : high / 1000;
    const settled = Math.abs(next - u) <= SETTLED * u;
    u = next;
    if (settled) return sign * u;
  }
}
