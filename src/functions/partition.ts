import { cases } from "../cells/cases";
import { aboveZero, aboveZeroUpTo, notNegative, quantity, upToOne } from "../cells/quantity";
import { optionalVector, vector } from "../cells/vector";
import { relativeAffinities } from "../model/partition/affinity";
import { areaPartition } from "../model/partition/area";
import { equilibrium } from "../model/partition/equilibrium";

/** Thicker than this no furnish flows: a larger number is a percentage typed for a fraction. */
const THICKEST_STOCK = 0.25;

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
    quantity("consistency", "fraction", aboveZeroUpTo(THICKEST_STOCK)),
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
