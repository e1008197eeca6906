import { requireEqualLengths, requireWholeFurnish, type Vector } from "../vectors";
import { dissolvedPerConcentration, filledSites } from "./furnish";

/** Relative step below which the next iterate, by quadratic convergence, is exact to rounding. */
const LAST_STEP = 1e-9;

/**
 * Additive held on each component, and last the part still dissolved, in kg per tonne of furnish.
 *
 * Independent Langmuir sites share one pool: Aᵢ = qᵢ·C/(Kᵢ+C), qᵢ = mᵢ·sᵢ·Γᵢ, and
 * Σ Aᵢ + C·V/1000 = dose with V = (1−c)/c m³ of water per tonne. Isotherm: Langmuir,
 * J. Am. Chem. Soc. 40 (1918) 1361. The sites compete only through the pool.
 */
export function equilibrium(
  dose: number,
  consistency: number,
  shares: Vector,
  surfaces: Vector,
  capacities: Vector,
  halfLoads: Vector,
): number[] {
  requireEqualLengths({ shares, surfaces, capacities, halfLoads });
  requireWholeFurnish(shares);
  return settle(
    dose,
    dissolvedPerConcentration(consistency),
    filledSites(shares, surfaces, capacities),
    halfLoads,
  );
}

/** The balance in its own terms: filled sites qᵢ in kg/t, `water` the kg/t dissolved at 1 mg/L. */
export function settle(pool: number, water: number, filled: Vector, halfLoads: Vector): number[] {
  const concentration = settledConcentration(pool, water, filled, halfLoads);
  const split = new Array<number>(filled.length + 1);
  for (let i = 0; i < filled.length; i++)
    split[i] = ((filled[i] as number) * concentration) / ((halfLoads[i] as number) + concentration);
  split[filled.length] = concentration * water;
  return split;
}

/**
 * The one root C ≥ 0, mg/L, of Σ qᵢ·C/(Kᵢ+C) + C·water = pool.
 *
 * Method: at the current C the sites are replaced by the single Langmuir site that has their total
 * uptake and slope, and the balance with that one site is a quadratic. This is the rational
 * interpolation used for secular equations (Bunch, Nielsen, Sorensen, Numer. Math. 31 (1978) 31).
 * The site has the half load b = Σ wᵢKᵢ / Σ wᵢ with wᵢ = qᵢ/(Kᵢ+C)², and the capacity
 * a = (b+C)·Σ qᵢ/(Kᵢ+C). C/uptake is a harmonic sum of straight lines in C, hence concave, and for
 * one site it is straight: so the single site never takes up more than the true ones, its root lies
 * on or above the true root, and the iterates fall to it monotonically, quadratically at the end.
 * No bracket is needed, and one component is exact at once. The start is the single site that C = ∞
 * gives. As C·f′ ≤ f, the balance closes to the relative accuracy of C.
 */
export function settledConcentration(
  pool: number,
  water: number,
  filled: Vector,
  halfLoads: Vector,
): number {
  if (pool === 0) return 0;
  const count = filled.length;
  let total = 0;
  let totalWeight = 0;
  for (let i = 0; i < count; i++) {
    total += filled[i] as number;
    totalWeight += (filled[i] as number) * (halfLoads[i] as number);
  }
  if (!(total > 0)) return pool / water;
  let concentration = oneSite(pool, water, total, totalWeight / total);
  for (;;) {
    let taken = 0;
    let weights = 0;
    let weighted = 0;
    for (let i = 0; i < count; i++) {
      const halfLoad = halfLoads[i] as number;
      const distance = 1 / (halfLoad + concentration);
      const perConcentration = (filled[i] as number) * distance;
      const weight = perConcentration * distance;
      taken += perConcentration;
      weights += weight;
      weighted += weight * halfLoad;
    }
    const halfLoad = weighted / weights;
    const next = oneSite(pool, water, taken * (halfLoad + concentration), halfLoad);
    if (!(next < concentration * (1 - LAST_STEP))) return next;
    concentration = next;
  }
}

/** The concentration with one Langmuir site: C²·water + (water·K + q − pool)·C − pool·K = 0. */
function oneSite(pool: number, water: number, capacity: number, halfLoad: number): number {
  const middle = water * halfLoad + capacity - pool;
  const root = Math.sqrt(middle * middle + 4 * water * pool * halfLoad);
  // The form without cancellation, for either sign.
  return middle > 0 ? (2 * pool * halfLoad) / (middle + root) : (root - middle) / (2 * water);
}
