import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  type Limits,
  notNegative,
  optionalQuantity,
  quantity,
  stockConsistency,
} from "../cells/quantity";
import { chargeDensity } from "../model/charge/density";
import { chargeLimit } from "../model/charge/limit";
import { nitrogenFromSubstitution, substitutionFromNitrogen } from "../model/charge/substitution";

/** More than 5 % no starch holds: a larger number is a percentage typed for a fraction. */
const nitrogenOfStarch: Limits = {
  least: 0,
  most: 0.05,
  words: "a fraction from 0 to 0.05, e.g. 0.003 for 0.3 %",
};

/** A sugar unit has three places for a group. */
const groups: Limits = { least: 0, most: 3, words: "0 to 3 groups per sugar unit, e.g. 0.035" };

const substitution = elementwise(
  "CHARGE.SUBSTITUTION",
  [quantity("nitrogen", "fraction", nitrogenOfStarch)],
  substitutionFromNitrogen,
);

/**
 * Degree of substitution of cationic starch from its nitrogen. Take off the nitrogen of the native starch,
 * which is protein, and give the result on dry starch.
 * @customfunction CHARGE.SUBSTITUTION
 * @param nitrogen Bound nitrogen in dry starch by mass, blank taken off [fraction]; 0 to 0.05.
 * @returns Quaternary groups per sugar unit [mol/mol].
 * @equation \text{DS} = \frac{162.141 \cdot N}{14.007 - 151.634 \cdot N}
 * @range Quaternary substituent (2-hydroxy-3-trimethylammoniopropyl) in the chloride form, all nitrogen bound in it.
 * @source Stoichiometry; abridged standard atomic masses, IUPAC CIAAW.
 * @words DS, Kjeldahl nitrogen, cationic starch, degree of substitution
 * @example =WETEND.CHARGE.SUBSTITUTION(0.3%) → 0.035892819
 * @requiresAddress
 */
export function chargeSubstitution(
  nitrogen: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return substitution(nitrogen, invocation);
}

const nitrogen = elementwise(
  "CHARGE.NITROGEN",
  [quantity("substitution", "mol/mol", groups)],
  nitrogenFromSubstitution,
);

/**
 * Bound nitrogen of cationic starch from its degree of substitution: the inverse of CHARGE.SUBSTITUTION.
 * @customfunction CHARGE.NITROGEN
 * @param substitution Quaternary groups per sugar unit [mol/mol]; 0 to 3.
 * @returns Bound nitrogen in dry starch by mass [fraction].
 * @equation N = \frac{14.007 \cdot \text{DS}}{162.141 + 151.634 \cdot \text{DS}}
 * @range Quaternary substituent in the chloride form; the protein of the starch comes on top.
 * @source Stoichiometry; abridged standard atomic masses, IUPAC CIAAW.
 * @words DS, nitrogen content, cationic starch
 * @example =WETEND.CHARGE.NITROGEN(0.035) → 0.002927741
 * @requiresAddress
 */
export function chargeNitrogen(
  substitution: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return nitrogen(substitution, invocation);
}

const density = elementwise(
  "CHARGE.DENSITY",
  [quantity("substitution", "mol/mol", groups)],
  chargeDensity,
);

/**
 * Charge density of cationic starch, one charge a quaternary group.
 * @customfunction CHARGE.DENSITY
 * @param substitution Quaternary groups per sugar unit [mol/mol]; 0 to 3.
 * @returns Cationic charge of the dry starch [meq/g].
 * @equation \text{density} = \frac{1000 \cdot \text{DS}}{162.141 + 151.634 \cdot \text{DS}}
 * @range Quaternary substituent in the chloride form, charged at every pH of papermaking. A titration finds less where groups are out of reach.
 * @source Stoichiometry; abridged standard atomic masses, IUPAC CIAAW.
 * @words cationicity, milliequivalents, cationic starch, polyelectrolyte titration
 * @example =WETEND.CHARGE.DENSITY(0.035) → 0.209019877
 * @requiresAddress
 */
export function chargeDensityOf(
  substitution: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return density(substitution, invocation);
}

const limit = elementwise(
  "CHARGE.LIMIT",
  [
    quantity("surfaceDemand", "µeq/g", notNegative),
    quantity("waterDemand", "µeq/L", notNegative),
    quantity("consistency", "fraction", stockConsistency),
    quantity("density", "meq/g", aboveZero),
    optionalQuantity("otherCationic", "µeq/g", notNegative, 0),
  ],
  chargeLimit,
);

/**
 * Dose of a cationic additive at which its charge equals the demand of the stock: a ceiling to confirm by
 * titration. The demand of recirculating water is an inventory, not fresh with every tonne.
 * @customfunction CHARGE.LIMIT
 * @param surfaceDemand Cationic demand of the solids [µeq/g]; 0 or more.
 * @param waterDemand Cationic demand of the water [µeq/L]; 0 or more.
 * @param consistency Oven-dry solids in the stock by mass [fraction]; above 0, up to 0.25.
 * @param density Charge density of the additive [meq/g]; above 0.
 * @param [otherCationic] Charge that other cationic additives bring [µeq/g]; 0 or more; 0 if left out.
 * @returns Dose of dry active additive at charge balance [kg/t]; #N/A if the others already exceed the demand.
 * @equation \text{dose} = \frac{q_\text{surface} + q_\text{water} \frac{1 - c}{1000\,c} - q_\text{other}}{\text{density}}
 * @range Water at 1 kg/L; every charge within reach of the additive, which large molecules do not manage.
 * @source Charge balance.
 * @words cationic demand, overcharge, zeta potential, streaming current, anionic trash, charge neutrality
 * @example =WETEND.CHARGE.LIMIT(10, 100, 1%, 0.2, 4.9) → 75
 * @requiresAddress
 */
export function chargeLimitOf(
  surfaceDemand: any[][],
  waterDemand: any[][],
  consistency: any[][],
  density: any[][],
  otherCationic: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return limit(surfaceDemand, waterDemand, consistency, density, otherCationic, invocation);
}
