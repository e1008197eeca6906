import { figure } from "../figure";
import { impossible } from "../refusal";
import {
  oneOrEach,
  requireEqualLengths,
  requireWholeFurnish,
  sumOf,
  type Vector,
} from "../vectors";
import { settle, settledConcentration } from "./equilibrium";
import { dissolvedPerConcentration, filledSites } from "./furnish";

/** Water may seem to fall by the rounding of a share or a consistency. */
const WATER_ROUNDING = 1e-9;

/** How things stand once position `position` has settled: kg/t, and mg/L of what is dissolved. */
export interface OrderedStage {
  readonly position: number;
  readonly held: readonly number[];
  readonly dissolved: number;
  readonly concentration: number;
}

/**
 * Additive held on each component, and last the part still dissolved, in kg per tonne of furnish,
 * where additive and components join the stock one after another.
 *
 * The answer is (1 − transfer)·walk + transfer·equilibrium: the walk downstream, in which nothing
 * held lets go, and the equilibrium of the whole at the last consistency, in which everything does.
 * `transfer` is the share of the additive that behaves in the second way.
 *
 * Limits: each position settles before the next; a site once filled is filled for good.
 * Basis: cationic starch is held quasi-irreversibly (Shirazi, van de Ven, Garnier, Langmuir 19 (2003)
 * 10829), cationic polyacrylamide transfers between surfaces (Tanaka, Ödberg 1992). The walk itself
 * is a mass balance over Langmuir sites, with no published source.
 */
export function orderedPartition(
  doses: Vector,
  dosePositions: Vector,
  componentPositions: Vector,
  consistencies: Vector,
  shares: Vector,
  surfaces: Vector,
  capacities: Vector,
  halfLoads: Vector,
  transfer: number,
): number[] {
  const stages = orderedWalk(
    doses,
    dosePositions,
    componentPositions,
    consistencies,
    shares,
    surfaces,
    capacities,
    halfLoads,
  );
  const last = stages[stages.length - 1] as OrderedStage;
  const walked = [...last.held, last.dissolved];
  if (transfer === 0) return walked;
  const settled = settle(
    sumOf(doses),
    dissolvedPerConcentration(oneOrEach(consistencies, last.position - 1)),
    filledSites(shares, surfaces, capacities),
    halfLoads,
  );
  return walked.map((amount, i) => (1 - transfer) * amount + transfer * (settled[i] as number));
}

/**
 * The walk, a stage for each position 1…P, P being the last in use. At each, the components placed
 * there join, then the doses placed there join the pool of dissolved additive, then the pool and the
 * unfilled sites settle in the water of the solids present, V = (share present)·(1−c)/c. Before there
 * are solids nothing settles, and that consistency is not used: 0 stands for none.
 */
export function orderedWalk(
  doses: Vector,
  dosePositions: Vector,
  componentPositions: Vector,
  consistencies: Vector,
  shares: Vector,
  surfaces: Vector,
  capacities: Vector,
  halfLoads: Vector,
): OrderedStage[] {
  requireEqualLengths({ doses, dosePositions });
  requireEqualLengths({ componentPositions, shares, surfaces, capacities, halfLoads });
  requireWholeFurnish(shares);
  const lastPosition = Math.max(...Array.from(dosePositions), ...Array.from(componentPositions));
  requireConsistencies(consistencies, lastPosition);

  const filled = filledSites(shares, surfaces, capacities);
  const furnish = sumOf(shares);
  const held = new Array<number>(shares.length).fill(0);
  const present: number[] = [];
  const stages: OrderedStage[] = [];
  let presentShare = 0;
  let pool = 0;
  let water = 0;
  for (let position = 1; position <= lastPosition; position++) {
    for (let i = 0; i < shares.length; i++) {
      if (componentPositions[i] !== position) continue;
      present.push(i);
      presentShare += shares[i] as number;
    }
    for (let j = 0; j < doses.length; j++) {
      if (dosePositions[j] === position) pool += doses[j] as number;
    }
    let concentration = 0;
    if (presentShare > 0) {
      const consistency = oneOrEach(consistencies, position - 1);
      if (consistency === 0) refuseNone(position);
      const waterThere = (presentShare / furnish) * dissolvedPerConcentration(consistency);
      refuseThickening(water, waterThere, position);
      water = waterThere;
      concentration = settleUnfilled(pool, water, present, filled, halfLoads, held);
      pool = concentration * water;
    }
    stages.push({ position, held: [...held], dissolved: pool, concentration });
  }
  return stages;
}

/**
 * Lets the pool and the unfilled sites settle, adds what is taken to `held`, and returns the
 * concentration that is left: Σ max(0, qᵢ·C/(Kᵢ+C) − heldᵢ) + C·water = pool.
 *
 * With the sites known that take up, this is the equilibrium balance of those sites alone, with what
 * they hold put back into the pool. Let all be taken to do so: a site that holds more than its share
 * then shows as giving some up, and C comes out too high, if anything, since max(held, A) ≥ A. Hence
 * each site seen to give up does not take up at the true C either. Those are left out and the balance
 * is solved again, until none gives up: C falls to the root, and no site ever comes back.
 */
function settleUnfilled(
  pool: number,
  water: number,
  present: readonly number[],
  filled: readonly number[],
  halfLoads: Vector,
  held: number[],
): number {
  let taking = present;
  for (;;) {
    const concentration = settledConcentration(
      taking.reduce((sum, i) => sum + (held[i] as number), pool),
      water,
      taking.map((i) => filled[i] as number),
      taking.map((i) => halfLoads[i] as number),
    );
    const settledAt = (i: number) =>
      ((filled[i] as number) * concentration) / ((halfLoads[i] as number) + concentration);
    const stillTaking = taking.filter((i) => settledAt(i) >= (held[i] as number));
    if (stillTaking.length === taking.length) {
      for (const i of taking) held[i] = settledAt(i);
      return concentration;
    }
    taking = stillTaking;
  }
}

/** One for all, or one for each position in use; what stands beyond those must be blank. */
function requireConsistencies(consistencies: Vector, lastPosition: number): void {
  let given = consistencies.length;
  while (given > lastPosition && consistencies[given - 1] === 0) given--;
  if (consistencies.length === 1 || given === lastPosition) return;
  const each = lastPosition > 1 ? `, or ${lastPosition}: one for each position` : "";
  impossible(
    `The number of consistencies is ${given}, and the last position in use is ${lastPosition}. ` +
      `Give one consistency${each}.`,
  );
}

function refuseNone(position: number): never {
  impossible(
    `The consistency at position ${position}, where there are solids, is 0 or blank. Give a fraction above 0, e.g. 0.03 for 3 %.`,
  );
}

function refuseThickening(before: number, there: number, position: number): void {
  if (there >= before * (1 - WATER_ROUNDING)) return;
  // dissolved kg/t at 1 mg/L is m³/t over 1000
  impossible(
    `The water falls from ${figure(before * 1000)} to ${figure(there * 1000)} m³ per tonne of furnish at position ${position}. ` +
      "Give consistencies at which water is added downstream, not taken out.",
  );
}
