import type { UnitCurve } from "../../strength/response";

/**
 * The mix in its own terms. Option i is used to the part yᵢ of its full amount, 0 ≤ yᵢ ≤ 1:
 *
 *   min Σ costᵢ·yᵢ   with   Σ gainᵢ·f(stretchᵢ·yᵢ) ≥ 1   and   Σ useᵢⱼ·yᵢ ≤ limitⱼ
 *
 * Gains are in parts of the target, stretch is the full amount over the scale of the response, f is
 * concave on the way to the full amount.
 */
export interface Program {
  readonly cost: number[];
  readonly gain: number[];
  readonly stretch: number[];
  readonly curve: readonly UnitCurve[];
  /** An array per limit, an entry per option. */
  readonly use: readonly number[][];
  readonly limit: number[];
}

/**
 * The curves of a program where its options are used to the parts `used`, and its constraints as rows
 * of ≤: one for each limit, and last the target, 1 − Σ gain ≤ 0. `left` is 1 − used with all its digits.
 */
export class Point {
  readonly used: number[];
  readonly left: number[];
  readonly slope: number[];
  /** −gain·f″·stretch², not negative. */
  readonly bend: number[];
  readonly gained: number[];
  /** The derivatives of the constraints. */
  readonly rows: readonly number[][];
  /** How far each constraint is broken; below 0 there is room. */
  readonly excess: number[];

  constructor(readonly program: Program) {
    const options = program.cost.length;
    this.used = new Array<number>(options).fill(0.5);
    this.left = new Array<number>(options).fill(0.5);
    this.slope = new Array<number>(options).fill(0);
    this.bend = new Array<number>(options).fill(0);
    this.gained = new Array<number>(options).fill(0);
    this.rows = [...program.use, new Array<number>(options).fill(0)];
    this.excess = new Array<number>(this.rows.length).fill(0);
  }

  evaluate(): void {
    const { gain, stretch, curve, use, limit } = this.program;
    const target = this.rows[use.length] as number[];
    let missing = 1;
    for (let i = 0; i < curve.length; i++) {
      const { rise, slope, bend } = curve[i] as UnitCurve;
      const factor = stretch[i] as number;
      const height = gain[i] as number;
      const t = factor * (this.used[i] as number);
      const gained = height * rise(t);
      const steepness = height * factor * slope(t);
      this.gained[i] = gained;
      this.slope[i] = steepness;
      this.bend[i] = -height * factor * factor * bend(t);
      target[i] = -steepness;
      missing -= gained;
    }
    for (let j = 0; j < use.length; j++) {
      const row = use[j] as number[];
      let excess = -(limit[j] as number);
      for (let i = 0; i < row.length; i++) excess += (row[i] as number) * (this.used[i] as number);
      this.excess[j] = excess;
    }
    this.excess[use.length] = missing;
  }

  /** Cost of each option at its full amount, with what its use of the limits is worth added. */
  netCost(i: number, multipliers: number[]): number {
    const { cost, use } = this.program;
    let net = cost[i] as number;
    for (let j = 0; j < use.length; j++)
      net += (multipliers[j] as number) * ((use[j] as number[])[i] as number);
    return net;
  }
}
