import { GramSchmidt } from "../../numerics/gram-schmidt";
import type { Point } from "./program";

/** Gap between cost and its proven lower bound, relative to the cost, at which the mix is exact. */
const EXACT = 1e-13;
/** A gap that will do where rounding stops the iteration short of that. */
const SUFFICIENT = 1e-9;
const MOST_STEPS = 30;
const PATIENCE = 15;
/** Costs are in units near 1; below this a gap is not asked to shrink along with the cost. */
const SMALL_COST = 0.01;
/** A shorter step than this starts over with half the barrier and no look ahead. */
const SHORT_STEP = 0.1;
const SHY = 0.9;
const BOLD = 0.99999;

/**
 * Takes a central point to the least cost, by Newton steps on all conditions at once: a primal–dual
 * interior-point method with predictor and corrector, which ends quadratically.
 *
 * The conditions come in pairs whose product is 0 in the end: each use with its reduced cost, each
 * unused part likewise, each slack with its multiplier. `room` and `price` hold the pairs, in this order.
 * A step reduces to least squares in the few multipliers, linear in the number of options.
 *
 * Source: Mehrotra, SIAM J. Optim. 2 (1992) 575–601; Wright, Primal-Dual Interior-Point Methods (1997).
 */
export class PrimalDual {
  private readonly options: number;
  private readonly constraints: number;
  private readonly room: number[];
  private readonly price: number[];
  private readonly roomStep: number[];
  private readonly priceStep: number[];
  private readonly lookAhead: number[];
  private readonly reduced: number[];
  private readonly residual: number[];
  private readonly stiffness: number[];
  private readonly force: number[];
  private readonly multiplierStep: number[];
  private readonly side: number[];
  private readonly newton: GramSchmidt;

  constructor(
    private readonly point: Point,
    private readonly multipliers: number[],
  ) {
    this.options = point.used.length;
    this.constraints = multipliers.length;
    const pairs = 2 * this.options + this.constraints;
    this.room = new Array<number>(pairs).fill(0);
    this.price = new Array<number>(pairs).fill(0);
    this.roomStep = new Array<number>(pairs).fill(0);
    this.priceStep = new Array<number>(pairs).fill(0);
    this.lookAhead = new Array<number>(pairs).fill(0);
    this.reduced = new Array<number>(this.options).fill(0);
    this.residual = new Array<number>(this.constraints).fill(0);
    this.stiffness = new Array<number>(this.options).fill(0);
    this.force = new Array<number>(this.options).fill(0);
    this.multiplierStep = new Array<number>(this.constraints).fill(0);
    this.side = new Array<number>(this.options + this.constraints).fill(0);
    this.newton = new GramSchmidt(this.options + this.constraints, this.constraints);
  }

  /** Whether the least cost was reached from the point, which is central for `barrier` with these multipliers. */
  descend(barrier: number, central: readonly number[]): boolean {
    const { room, price, options } = this;
    for (let i = 0; i < options; i++) {
      room[i] = this.point.used[i] as number;
      room[options + i] = this.point.left[i] as number;
    }
    for (let k = 0; k < this.constraints; k++)
      room[2 * options + k] = barrier / (central[k] as number);
    for (let p = 0; p < room.length; p++) price[p] = barrier / (room[p] as number);

    for (let steps = 0; steps < MOST_STEPS; steps++) {
      const { gap, imbalance, shortage, cost } = this.measure();
      const scale = Math.max(cost, SMALL_COST);
      if (gap < EXACT * scale && imbalance < EXACT * scale && shortage < EXACT) return true;
      if (
        steps >= PATIENCE &&
        Math.max(gap, imbalance * this.options) < SUFFICIENT * scale &&
        shortage < SUFFICIENT / 100
      ) {
        return true;
      }
      if (!(gap < Number.MAX_VALUE)) return false;
      this.advance(gap / room.length);
    }
    return false;
  }

  /** How far the point is from each condition. */
  private measure(): { gap: number; imbalance: number; shortage: number; cost: number } {
    const { point, multipliers, room, price, options } = this;
    for (let i = 0; i < options; i++) {
      point.used[i] = room[i] as number;
      point.left[i] = room[options + i] as number;
    }
    for (let k = 0; k < this.constraints; k++) multipliers[k] = price[2 * options + k] as number;
    point.evaluate();
    const worth = multipliers[this.constraints - 1] as number;
    let imbalance = 0;
    let cost = 0;
    for (let i = 0; i < options; i++) {
      const reduced = point.netCost(i, multipliers) - worth * (point.slope[i] as number);
      this.reduced[i] = reduced;
      const below = room[i] as number;
      const above = room[options + i] as number;
      const off = reduced - (price[i] as number) + (price[options + i] as number);
      imbalance = Math.max(imbalance, Math.abs(off) * Math.min(below, above));
      cost += (point.program.cost[i] as number) * below;
    }
    let shortage = 0;
    for (let k = 0; k < this.constraints; k++) {
      const off = (point.excess[k] as number) + (room[2 * options + k] as number);
      this.residual[k] = off;
      shortage = Math.max(shortage, Math.abs(off));
    }
    return { gap: this.gapAfter(0), imbalance, shortage, cost };
  }

  /** Σ room·price, which is cost less its lower bound, were a step of this length taken. */
  private gapAfter(length: number): number {
    let gap = 0;
    for (let p = 0; p < this.room.length; p++) {
      gap +=
        ((this.room[p] as number) + length * (this.roomStep[p] as number)) *
        ((this.price[p] as number) + length * (this.priceStep[p] as number));
    }
    return gap;
  }

  private advance(mean: number): void {
    const { room, price, roomStep, priceStep, lookAhead } = this;
    this.factorise();
    lookAhead.fill(0);
    this.direct(0);
    const pairs = room.length;
    const centring = Math.min(1, (this.gapAfter(this.reach()) / (mean * pairs)) ** 3);
    for (let p = 0; p < pairs; p++)
      lookAhead[p] = (roomStep[p] as number) * (priceStep[p] as number);
    this.direct(centring * mean);
    let length = Math.min(1, Math.max(SHY, Math.min(BOLD, 1 - mean * pairs)) * this.reach());
    if (length < SHORT_STEP) {
      lookAhead.fill(0);
      this.direct(mean / 2);
      length = Math.min(1, SHY * this.reach());
    }
    for (let p = 0; p < pairs; p++) {
      room[p] = (room[p] as number) + length * (roomStep[p] as number);
      price[p] = (price[p] as number) + length * (priceStep[p] as number);
    }
    roomStep.fill(0);
    priceStep.fill(0);
  }

  private factorise(): void {
    const { point, room, price, options, constraints } = this;
    const worth = this.multipliers[constraints - 1] as number;
    for (let i = 0; i < options; i++) {
      this.stiffness[i] = Math.sqrt(
        worth * (point.bend[i] as number) +
          (price[i] as number) / (room[i] as number) +
          (price[options + i] as number) / (room[options + i] as number),
      );
    }
    for (let k = 0; k < constraints; k++) {
      const column = this.newton.columns[k] as number[];
      const row = point.rows[k] as number[];
      for (let i = 0; i < options; i++)
        column[i] = (row[i] as number) / (this.stiffness[i] as number);
      column.fill(0, options);
      column[options + k] = this.slackStiffness(k);
    }
    this.newton.factorise();
  }

  private slackStiffness(k: number): number {
    const p = 2 * this.options + k;
    return Math.sqrt((this.room[p] as number) / (this.price[p] as number));
  }

  /** The Newton direction towards products of `barrier`, less what was looked ahead. */
  private direct(barrier: number): void {
    const { point, room, price, roomStep, priceStep, lookAhead, force, side, options } = this;
    const towards = (p: number) => (barrier - (lookAhead[p] as number)) / (room[p] as number);
    for (let i = 0; i < options; i++) {
      force[i] = towards(i) - towards(options + i) - (this.reduced[i] as number);
      side[i] = (force[i] as number) / (this.stiffness[i] as number);
    }
    for (let k = 0; k < this.constraints; k++) {
      const p = 2 * options + k;
      const slack = (barrier - (lookAhead[p] as number)) / (price[p] as number);
      side[options + k] =
        ((this.residual[k] as number) - (room[p] as number) + slack) / this.slackStiffness(k);
    }
    this.newton.solve(side, this.multiplierStep);
    for (let k = 0; k < this.constraints; k++) {
      const row = point.rows[k] as number[];
      const step = this.multiplierStep[k] as number;
      for (let i = 0; i < options; i++) force[i] = (force[i] as number) - (row[i] as number) * step;
    }
    for (let i = 0; i < options; i++) {
      const stiffness = this.stiffness[i] as number;
      roomStep[i] = (force[i] as number) / (stiffness * stiffness);
      roomStep[options + i] = -(roomStep[i] as number);
    }
    for (let k = 0; k < this.constraints; k++) {
      const row = point.rows[k] as number[];
      let slackStep = -(this.residual[k] as number);
      for (let i = 0; i < options; i++) slackStep -= (row[i] as number) * (roomStep[i] as number);
      roomStep[2 * options + k] = slackStep;
    }
    for (let p = 0; p < 2 * options; p++) {
      priceStep[p] =
        towards(p) -
        ((price[p] as number) * (roomStep[p] as number)) / (room[p] as number) -
        (price[p] as number);
    }
    for (let k = 0; k < this.constraints; k++)
      priceStep[2 * options + k] = this.multiplierStep[k] as number;
  }

  /** The longest step, up to 1, that leaves room and prices above 0. */
  private reach(): number {
    let length = 1;
    for (let p = 0; p < this.room.length; p++) {
      const roomStep = this.roomStep[p] as number;
      const priceStep = this.priceStep[p] as number;
      if (roomStep < 0) length = Math.min(length, -(this.room[p] as number) / roomStep);
      if (priceStep < 0) length = Math.min(length, -(this.price[p] as number) / priceStep);
    }
    return length;
  }
}
