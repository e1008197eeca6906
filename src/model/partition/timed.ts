import { StiffSolution, type StiffSystem } from "../numerics/rosenbrock";
import { requireEqualLengths, requireWholeFurnish, type Vector } from "../vectors";
import { dissolvedPerConcentration, filledSites } from "./furnish";

/** Error allowed in a step, relative to each amount: leaves a digit over the 1e-6 of the answer. */
const STEP_TOLERANCE = 1e-7;

/** Amounts below this share of the dose are followed to that share only. */
const NEGLIGIBLE = 1e-6;

/** The first step tried, against the quickest of the uptakes. */
const FIRST_STEP = 0.01;

/**
 * Additive held on each component after each of `times` seconds, and last the part still dissolved,
 * in kg per tonne of furnish: a row per time, in the order given.
 *
 * Langmuir's kinetics from one pool, all dissolved at the start:
 *
 *   dAᵢ/dt = kᵢ·[C·(qᵢ−Aᵢ) − Kᵢ·Aᵢ],   Σ Aᵢ + C·V/1000 = dose
 *
 * with kᵢ in L/(mg·s). They come to rest at the equilibrium partition. Limits: well mixed; one site
 * and one rate a component, so pores that fill later are not in it.
 *
 * Rates may differ by many orders (outer surfaces in seconds, pores in hours): an implicit method is
 * used, see numerics/rosenbrock. The relative accuracy of each amount above a millionth of the dose
 * is 1e-6 or better. Source of the rate law: Langmuir, J. Am. Chem. Soc. 40 (1918) 1361.
 */
export function timedPartition(
  times: Vector,
  dose: number,
  consistency: number,
  shares: Vector,
  surfaces: Vector,
  capacities: Vector,
  halfLoads: Vector,
  rates: Vector,
): number[][] {
  requireEqualLengths({ shares, surfaces, capacities, halfLoads, rates });
  requireWholeFurnish(shares);
  const filled = filledSites(shares, surfaces, capacities);
  const water = dissolvedPerConcentration(consistency);
  const start = new Float64Array(filled.length + 1);
  start[filled.length] = dose;
  const system = new SharedPool(filled, halfLoads, rates, water, dose);
  const solution = new StiffSolution(system, start, FIRST_STEP / system.quickestRate(dose / water));

  const rows = new Array<number[]>(times.length);
  const soonestFirst = Array.from(times, (_, row) => row).sort(
    (a, b) => (times[a] as number) - (times[b] as number),
  );
  for (const row of soonestFirst) {
    solution.advanceTo(times[row] as number);
    rows[row] = Array.from(solution.y);
  }
  return rows;
}

/**
 * Components that take up from one pool. The last of the values is what is dissolved, D = C·water; it
 * is followed as a value of its own, so that it keeps its digits when little is left.
 *
 * A component feels the others through the pool only, so that pivot·I − J has entries on its
 * diagonal, in its last column and in its last row. With dᵢ = kᵢ·(C+Kᵢ), bᵢ = kᵢ·(qᵢ−Aᵢ)/water and
 * gᵢ = pivot + dᵢ the solution for the right-hand side r is
 *
 *   x_D = −Σ (rᵢ/gᵢ) / (1 + Σ bᵢ/gᵢ),   xᵢ = (rᵢ + bᵢ·x_D)/gᵢ
 *
 * where r_D = −Σ rᵢ is used, which holds since no additive is made or lost. A solve takes two sweeps.
 */
class SharedPool implements StiffSystem {
  readonly size: number;
  private readonly perPivot: Float64Array;
  private readonly pull: Float64Array;
  private shared = 1;

  constructor(
    private readonly filled: Vector,
    private readonly halfLoads: Vector,
    private readonly rates: Vector,
    private readonly water: number,
    private readonly dose: number,
  ) {
    this.size = filled.length + 1;
    this.perPivot = new Float64Array(filled.length);
    this.pull = new Float64Array(filled.length);
  }

  quickestRate(concentration: number): number {
    let quickest = 0;
    let together = 0;
    for (let i = 0; i < this.filled.length; i++) {
      const rate = this.rates[i] as number;
      quickest = Math.max(quickest, rate * (concentration + (this.halfLoads[i] as number)));
      together += (rate * (this.filled[i] as number)) / this.water;
    }
    return quickest + together;
  }

  derivative(y: Float64Array, into: Float64Array): void {
    const count = this.filled.length;
    const concentration = (y[count] as number) / this.water;
    let taken = 0;
    for (let i = 0; i < count; i++) {
      const held = y[i] as number;
      const uptake =
        (this.rates[i] as number) *
        (concentration * ((this.filled[i] as number) - held) -
          (this.halfLoads[i] as number) * held);
      into[i] = uptake;
      taken += uptake;
    }
    into[count] = -taken;
  }

  linearise(y: Float64Array, pivot: number): void {
    const count = this.filled.length;
    const concentration = (y[count] as number) / this.water;
    this.shared = 1;
    for (let i = 0; i < count; i++) {
      const rate = this.rates[i] as number;
      const perPivot = 1 / (pivot + rate * (concentration + (this.halfLoads[i] as number)));
      const pull = (rate * ((this.filled[i] as number) - (y[i] as number))) / this.water;
      this.perPivot[i] = perPivot;
      this.pull[i] = pull;
      this.shared += pull * perPivot;
    }
  }

  solve(side: Float64Array, into: Float64Array): void {
    const count = this.filled.length;
    let given = 0;
    for (let i = 0; i < count; i++) given += (side[i] as number) * (this.perPivot[i] as number);
    const pool = -given / this.shared;
    for (let i = 0; i < count; i++) {
      into[i] =
        ((side[i] as number) + (this.pull[i] as number) * pool) * (this.perPivot[i] as number);
    }
    into[count] = pool;
  }

  allowed(_: number, amount: number): number {
    return STEP_TOLERANCE * Math.max(amount, NEGLIGIBLE * this.dose);
  }
}
