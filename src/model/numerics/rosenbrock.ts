import { figure } from "../figure";
import { noAnswer } from "../refusal";

/**
 * Stiff differential equations dy/dt = f(y) that do not name the time, by a Rosenbrock method:
 * linearly implicit, L-stable, stiffly accurate, of order 4 with an embedded order 3, six stages. A
 * stage costs one f and one solve with the matrix I/(γh) − J, which the system solves in its own way.
 *
 *   (I/(γh) − J)·uᵢ = f(y + Σ aᵢⱼ·uⱼ) + Σ (cᵢⱼ/h)·uⱼ,   next y = y + Σ a₆ⱼ·uⱼ + u₆,   error = u₆
 *
 * Source: Hairer & Wanner, Solving Ordinary Differential Equations II, 2nd ed. (1996), section IV.7
 * (the method in this transformed form, step control) and section VI.4 (RODAS and its coefficients).
 */
const GAMMA = 0.25;
const A: readonly (readonly number[])[] = [
  [],
  [1.544],
  [0.9466785280815826, 0.2557011698983284],
  [3.314825187068521, 2.896124015972201, 0.9986419139977817],
  [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895],
  [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 1],
];
const C: readonly (readonly number[])[] = [
  [],
  [-5.6688],
  [-2.430093356833875, -0.2063599157091915],
  [-0.1073529058151375, -9.594562251023355, -20.47028614809616],
  [7.496443313967647, -10.24680431464352, -33.99990352819905, 11.7089089320616],
  [
    8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136,
    -6.058818238834054,
  ],
];
const STAGES = 6;

const SAFETY = 0.9;
const SHRINK_AT_MOST = 0.2;
const GROW_AT_MOST = 6;
const ERROR_POWER = -1 / 4;
const MOST_STEPS = 10_000;

export interface StiffSystem {
  readonly size: number;
  /** f(y), written into `into`. */
  derivative(y: Float64Array, into: Float64Array): void;
  /** Gets ready to solve with the matrix pivot·I − J(y). */
  linearise(y: Float64Array, pivot: number): void;
  /** The solution for a right-hand side, written into `into`. */
  solve(side: Float64Array, into: Float64Array): void;
  /** What an error in component i is measured against, at the size y of that component. */
  allowed(i: number, y: number): number;
}

/** A solution on its way: advance it from time to time, each not before the last. */
export class StiffSolution {
  private time = 0;
  private readonly next: Float64Array;
  private readonly side: Float64Array;
  private readonly stages: Float64Array[];

  /** Starts at time 0 with the values `y`, which are advanced in place, and a first step to try. */
  constructor(
    private readonly system: StiffSystem,
    readonly y: Float64Array,
    private step: number,
  ) {
    this.next = new Float64Array(system.size);
    this.side = new Float64Array(system.size);
    this.stages = Array.from({ length: STAGES }, () => new Float64Array(system.size));
  }

  advanceTo(end: number): void {
    for (let steps = 0; this.time < end; steps++) {
      const stands = this.time + this.step === this.time;
      if (stands || steps === MOST_STEPS) {
        noAnswer(
          `The course in time cannot be followed to ${figure(end)} s with sufficient accuracy. Check the units of the rates.`,
        );
      }
      const left = end - this.time;
      const reachesEnd = left <= this.step;
      const step = reachesEnd ? left : this.step;
      const error = this.tryStep(step);
      const factor = Math.min(GROW_AT_MOST, SAFETY * error ** ERROR_POWER);
      if (error <= 1) {
        this.y.set(this.next);
        this.time = reachesEnd ? end : this.time + step;
        // A step cut short to meet the end says little: it never shortens the steps after it.
        this.step = reachesEnd ? Math.max(this.step, step * factor) : step * factor;
      } else {
        this.step = step * Math.max(SHRINK_AT_MOST, factor || 0);
      }
    }
  }

  /** One step into `next`; returns the error in units of what is allowed. */
  private tryStep(step: number): number {
    const { system, y, next, side, stages } = this;
    system.linearise(y, 1 / (GAMMA * step));
    for (let stage = 0; stage < STAGES; stage++) {
      combine(y, A[stage] as readonly number[], stages, 1, next);
      system.derivative(next, side);
      combine(side, C[stage] as readonly number[], stages, 1 / step, side);
      system.solve(side, stages[stage] as Float64Array);
    }
    const last = stages[STAGES - 1] as Float64Array;
    let error = 0;
    for (let i = 0; i < system.size; i++) {
      const change = last[i] as number;
      const value = (next[i] as number) + change;
      next[i] = value;
      if (change === 0) continue;
      const allowed = system.allowed(i, Math.max(Math.abs(y[i] as number), Math.abs(value)));
      error = Math.max(error, Math.abs(change) / allowed);
    }
    return error;
  }
}

/** into = from + factor·Σ weightⱼ·stageⱼ */
function combine(
  from: Float64Array,
  weights: readonly number[],
  stages: readonly Float64Array[],
  factor: number,
  into: Float64Array,
): void {
  if (into !== from) into.set(from);
  for (let j = 0; j < weights.length; j++) {
    const weight = (weights[j] as number) * factor;
    const stage = stages[j] as Float64Array;
    for (let i = 0; i < into.length; i++)
      into[i] = (into[i] as number) + weight * (stage[i] as number);
  }
}
