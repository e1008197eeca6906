import { cases } from "../cells/cases";
import {
  aboveZero,
  type Limits,
  notNegative,
  optionalQuantity,
  quantity,
  stockConsistency,
  upToOne,
  wholeBetween,
} from "../cells/quantity";
import { optionalVector, vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { relativeAffinities } from "../model/partition/affinity";
import { areaPartition } from "../model/partition/area";
import { equilibrium } from "../model/partition/equilibrium";
import { orderedPartition } from "../model/partition/ordered";
import { timedPartition } from "../model/partition/timed";

const byCase = { byCase: true };
const surfaces = vector("surfaces", "n", "m²/g", aboveZero, byCase);
const shares = vector("shares", "n", "fraction", upToOne, byCase);

const area = cases(
  "PARTITION.AREA",
  [
    vector("shares", "n", "mass, any one unit", notNegative, byCase),
    surfaces,
    optionalVector("affinities", "n", "relative to the first", notNegative, byCase),
  ],
  areaPartition,
);

/**
 * Share of the additive on each component of the furnish while sites are plenty: by surface area, so that
 * fines take far more than their weight.
 * @customfunction PARTITION.AREA
 * @param shares Mass of each component [mass, any one unit]; 0 or more; a row or a column, or a block with one case a row.
 * @param surfaces Specific surface of each component [m²/g]; above 0.
 * @param [affinities] Affinity of each component per unit of surface [relative to the first]; 0 or more; 1 each if left out.
 * @returns Share of the additive on each component, sum 1 [fraction].
 * @equation w_i = \frac{m_i s_i a_i}{\sum_j m_j s_j a_j}
 * @range Doses far below the one that fills the surfaces (DOSE.SURFACELIMIT).
 * @source Low-dose limit of the Langmuir isotherm: Langmuir, J. Am. Chem. Soc. 40 (1918) 1361.
 * @words where does it go, surface area, fines take more, split, distribution
 * @example =WETEND.PARTITION.AREA({0.8,0.2}, {1.5,8}) → {0.428571429,0.571428571}
 * @requiresAddress
 */
export function partitionArea(
  shares: any[][],
  surfaces: any[][],
  affinities: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return area(shares, surfaces, affinities, invocation);
}

const affinity = cases(
  "PARTITION.AFFINITY",
  [
    vector("measured", "n", "amount, any one unit", notNegative),
    vector("shares", "n", "mass, any one unit", aboveZero),
    vector("surfaces", "n", "m²/g", aboveZero),
  ],
  relativeAffinities,
);

/**
 * Relative affinity of each component per unit of surface, from what a separated beaker test found on each:
 * calibrate on one furnish, reuse in PARTITION.AREA on another.
 * @customfunction PARTITION.AFFINITY
 * @param measured Additive found on each component [amount, any one unit]; 0 or more, the first above 0; a row or a column.
 * @param shares Mass of each component in the beaker [mass, any one unit]; above 0.
 * @param surfaces Specific surface of each component [m²/g]; above 0.
 * @returns Affinity of each component, the first being 1 [relative to the first].
 * @equation a_i = \frac{A_i / (m_i s_i)}{A_1 / (m_1 s_1)}
 * @range A beaker test at a dose far below the one that fills the surfaces.
 * @source The inverse of PARTITION.AREA.
 * @words calibrate, beaker test, separated furnish, measured split
 * @example =WETEND.PARTITION.AFFINITY({0.3,0.7}, {0.8,0.2}, {1.5,8}) → {1,1.75}
 * @requiresAddress
 */
export function partitionAffinity(
  measured: any[][],
  shares: any[][],
  surfaces: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return affinity(measured, shares, surfaces, invocation);
}

const settled = cases(
  "PARTITION.EQUILIBRIUM",
  [
    quantity("dose", "kg/t", notNegative),
    quantity("consistency", "fraction", stockConsistency),
    shares,
    surfaces,
    vector("capacities", "n", "mg/m²", aboveZero, byCase),
    vector("halfLoads", "n", "mg/L", aboveZero, byCase),
  ],
  equilibrium,
);

/**
 * Additive held on each component, and last the part still dissolved, once all of the furnish has shared
 * one pool of additive. Calibrate capacities and half loads by beaker test: no published constants exist.
 * @customfunction PARTITION.EQUILIBRIUM
 * @param dose Dose of dry active additive [kg/t]; 0 or more; a column gives a case a row.
 * @param consistency Consistency where it settles [fraction]; above 0, up to 0.25; a column gives a case a row.
 * @param shares Mass share of each component, sum 1 within 0.005 [fraction]; a row or a column, or a block with one case a row.
 * @param surfaces Specific surface of each component [m²/g]; above 0.
 * @param capacities Additive that fills a unit of surface [mg/m²]; above 0.
 * @param halfLoads Dissolved concentration at which half of the sites are filled [mg/L]; above 0.
 * @returns Additive held on each component, last the part still dissolved [kg/t].
 * @equation \sum_i \frac{q_i C}{K_i + C} + \frac{C V}{1000} = \text{dose}, \quad q_i = m_i s_i \Gamma_i, \quad V = \frac{1 - c}{c}
 * @range Independent sites that share one pool; time enough to settle (PARTITION.TIMED tells); range not stated by the source.
 * @source Langmuir, J. Am. Chem. Soc. 40 (1918) 1361; mass balance.
 * @words where does it go, adsorption, saturation, isotherm, dissolved starch
 * @example =WETEND.PARTITION.EQUILIBRIUM(7, 0.03, {0.55,0.25,0.2}, {1.5,8,12}, {8,10,1.667}, {20,11,1}) → {0.680416,3.457235,2.788019,0.07433}
 * @requiresAddress
 */
export function partitionEquilibrium(
  dose: any[][],
  consistency: any[][],
  shares: any[][],
  surfaces: any[][],
  capacities: any[][],
  halfLoads: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return settled(dose, consistency, shares, surfaces, capacities, halfLoads, invocation);
}

/** More places along the wet end than any machine has. */
const MOST_POSITIONS = 50;
const position = wholeBetween(1, MOST_POSITIONS);
/** Where no solids are yet there is no consistency: such a place may stay blank. */
const consistencyOrBlank: Limits = { ...stockConsistency, least: 0 };

const walked = cases(
  "PARTITION.ORDERED",
  [
    vector("doses", "k", "kg/t", notNegative),
    vector("dosePositions", "k", "position", position),
    vector("componentPositions", "n", "position", position),
    vector("consistencies", "P", "fraction", consistencyOrBlank, { gaps: true }),
    vector("shares", "n", "fraction", upToOne),
    vector("surfaces", "n", "m²/g", aboveZero),
    vector("capacities", "n", "mg/m²", aboveZero),
    vector("halfLoads", "n", "mg/L", aboveZero),
    optionalQuantity("transfer", "fraction", upToOne, 0),
  ],
  orderedPartition,
);

/**
 * Additive on each component, and last the part still dissolved, when components and doses join one after
 * another: what comes first takes first. Positions count downstream from 1. At each, components join, doses
 * join, then the pool and the unfilled sites settle; nothing held lets go, but for the part `transfer`.
 * One case a formula: for a log of days, enter it on the first day and fill it down.
 * @customfunction PARTITION.ORDERED
 * @param doses Doses of dry active additive on the whole furnish [kg/t]; 0 or more; one or several, a row or a column.
 * @param dosePositions Where each dose is added [position]; whole numbers from 1 downstream.
 * @param componentPositions Where each component joins [position]; whole numbers from 1 downstream.
 * @param consistencies Consistency at each position [fraction]; above 0, up to 0.25; one for all, or one for each position, blank where no solids are yet.
 * @param shares Mass share of each component in the whole furnish, sum 1 within 0.005 [fraction].
 * @param surfaces Specific surface of each component [m²/g]; above 0.
 * @param capacities Additive that fills a unit of surface [mg/m²]; above 0.
 * @param halfLoads Dissolved concentration at which half of the sites are filled [mg/L]; above 0.
 * @param [transfer] How far the additive moves on to where equilibrium would have it [fraction]; 0 to 1; 0 if left out: nothing held lets go.
 * @returns Additive held on each component, last the part still dissolved [kg/t].
 * @equation \text{uptake}_i = \max\!\left(0, \frac{q_i C}{K_i + C} - \text{held}_i\right), \quad \sum_i \text{uptake}_i + \frac{C V}{1000} = \text{pool}, \quad V = \text{share present} \cdot \frac{1 - c}{c}
 * @range Time enough to settle at each position; dilution, never thickening, downstream.
 * @source Langmuir, J. Am. Chem. Soc. 40 (1918) 1361, at each position; mass balance.
 * @words order of addition, filler after starch, before the clay, dosing point, split dose
 * @example =WETEND.PARTITION.ORDERED(7, 1, {1,1,2}, {0.03,0.008}, {0.55,0.25,0.2}, {1.5,8,12}, {8,10,1.667}, {20,11,1}) → {1.186719,5.699869,0.109909,0.003503}
 * @requiresAddress
 */
export function partitionOrdered(
  doses: any[][],
  dosePositions: any[][],
  componentPositions: any[][],
  consistencies: any[][],
  shares: any[][],
  surfaces: any[][],
  capacities: any[][],
  halfLoads: any[][],
  transfer: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return walked(
    doses,
    dosePositions,
    componentPositions,
    consistencies,
    shares,
    surfaces,
    capacities,
    halfLoads,
    transfer,
    invocation,
  );
}

const timed = whole(
  "PARTITION.TIMED",
  [
    vector("times", "t", "s", notNegative),
    quantity("dose", "kg/t", notNegative),
    quantity("consistency", "fraction", stockConsistency),
    vector("shares", "n", "fraction", upToOne),
    vector("surfaces", "n", "m²/g", aboveZero),
    vector("capacities", "n", "mg/m²", aboveZero),
    vector("halfLoads", "n", "mg/L", aboveZero),
    vector("rates", "n", "L/(mg·s)", notNegative),
  ],
  timedPartition,
);

/**
 * Additive on each component as time goes on, all of it dissolved at the start: whether a contact of seconds
 * is enough, and what takes first.
 * @customfunction PARTITION.TIMED
 * @param times Times since the addition [s]; 0 or more; a row or a column, in any order.
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param consistency Consistency where it settles [fraction]; above 0, up to 0.25.
 * @param shares Mass share of each component, sum 1 within 0.005 [fraction].
 * @param surfaces Specific surface of each component [m²/g]; above 0.
 * @param capacities Additive that fills a unit of surface [mg/m²]; above 0.
 * @param halfLoads Dissolved concentration at which half of the sites are filled [mg/L]; above 0.
 * @param rates Rate of uptake of each component [L/(mg·s)]; 0 or more.
 * @returns Table: a row a time, a column a component, last the part still dissolved [kg/t].
 * @equation \frac{\mathrm{d}A_i}{\mathrm{d}t} = k_i \left[ C\,(q_i - A_i) - K_i A_i \right], \quad \sum_i A_i + \frac{C V}{1000} = \text{dose}
 * @range Well-mixed stock; relative accuracy 1e-6.
 * @source Langmuir kinetics, J. Am. Chem. Soc. 40 (1918) 1361; mass balance.
 * @words contact time, kinetics, how fast, uptake, seconds
 * @example =WETEND.PARTITION.TIMED({0;5;60}, 7, 0.03, {0.55,0.25,0.2}, {1.5,8,12}, {8,10,1.667}, {20,11,1}, {0.001,0.002,0.01}) → {0,0,0,7;0.646484,3.68007,2.598667,0.074779;0.669036,3.501877,2.754861,0.074227}
 * @requiresAddress
 */
export function partitionTimed(
  times: any[][],
  dose: any[][],
  consistency: any[][],
  shares: any[][],
  surfaces: any[][],
  capacities: any[][],
  halfLoads: any[][],
  rates: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return timed(
    times,
    dose,
    consistency,
    shares,
    surfaces,
    capacities,
    halfLoads,
    rates,
    invocation,
  );
}
