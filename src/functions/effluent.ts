import { flag, text } from "../cells/choice";
import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  belowOne,
  notNegative,
  optionalQuantity,
  oxygenDemand,
  quantity,
  upToOne,
} from "../cells/quantity";
import { whole } from "../cells/whole";
import { largestDoseWithin } from "../model/effluent/allowance";
import { effluentConcentration } from "../model/effluent/concentration";
import { effluentLoad } from "../model/effluent/load";
import { additiveLoss } from "../model/effluent/loss";
import { theoreticalOxygenDemand } from "../model/effluent/oxygen-demand";

const dose = quantity("dose", "kg/t", notNegative);
const overallRetention = quantity("overallRetention", "fraction", upToOne);
const production = quantity("production", "t/d oven-dry", notNegative);
const factor = quantity("factor", "g/g", oxygenDemand);

const loss = elementwise("EFFLUENT.LOSS", [dose, overallRetention, production], additiveLoss);

/**
 * Additive that is not retained and leaves the machine, whole or degraded.
 * @customfunction EFFLUENT.LOSS
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param overallRetention Share that stays in the sheet with the loop closed [fraction]; 0 to 1.
 * @param production Oven-dry furnish that the dose is given on [t/d]; 0 or more.
 * @returns Additive that leaves with the water [kg/d].
 * @equation \text{loss} = \text{dose}\,(1 - R)\,\text{production}
 * @range Steady running, raw load at the machine's outfall, before treatment.
 * @source Mass balance.
 * @words what leaves, lost starch, unretained, to sewer
 * @example =WETEND.EFFLUENT.LOSS(8, 0.82, 340) → 489.6
 * @requiresAddress
 */
export function effluentLoss(
  dose: any[][],
  overallRetention: any[][],
  production: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return loss(dose, overallRetention, production, invocation);
}

const oxygen = whole(
  "EFFLUENT.OXYGEN",
  [text("formula", "a chemical formula, e.g. C6H10O5"), flag("nitrify", false)],
  (formula, nitrify) => [[theoreticalOxygenDemand(formula, nitrify)]],
);

/**
 * Theoretical oxygen demand of a substance, from its chemical formula. It is above what a test measures:
 * take a measured factor for a permit.
 * @customfunction EFFLUENT.OXYGEN
 * @param formula Chemical formula with elements as written, brackets and hydrate dots allowed [text, e.g. C6H10O5].
 * @param [nitrify] TRUE counts the oxidation of nitrogen to nitrate [TRUE or FALSE]; FALSE if left out: nitrogen leaves as ammonia.
 * @returns Oxygen for full oxidation [g O₂/g].
 * @equation \text{ThOD} = \frac{31.998 \cdot n_{\mathrm{O_2}}}{M}, \quad n_{\mathrm{O_2}} = \frac{\text{reducing valences} - \text{oxidising valences}}{4}
 * @range Formulas of C, H, O, N, S, P, halogens and the metals of salts.
 * @source Stoichiometry; abridged standard atomic masses, IUPAC CIAAW.
 * @words ThOD, chemical oxygen demand, stoichiometry, starch oxygen demand
 * @example =WETEND.EFFLUENT.OXYGEN("C6H10O5") → 1.184080523
 * @example =WETEND.EFFLUENT.OXYGEN("C3H5NO", TRUE) → 2.250875786
 * @requiresAddress
 */
export function effluentOxygen(
  formula: string,
  nitrify: boolean,
  invocation: CustomFunctions.Invocation,
): any[][] {
  return oxygen(formula, nitrify, invocation);
}

const cod = elementwise("EFFLUENT.COD", [dose, overallRetention, production, factor], effluentLoad);

/**
 * Chemical oxygen demand that the unretained additive brings, before treatment. The factor is the
 * additive's own: measured starch lies a little below its theoretical 1.18 g/g.
 * @customfunction EFFLUENT.COD
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param overallRetention Share that stays in the sheet with the loop closed [fraction]; 0 to 1.
 * @param production Oven-dry furnish that the dose is given on [t/d]; 0 or more.
 * @param factor Chemical oxygen demand of the dry additive [g/g]; 0 to 8.
 * @returns Raw load of chemical oxygen demand [kg/d].
 * @equation \text{COD} = \text{dose}\,(1 - R)\,\text{production} \cdot \text{factor}
 * @range Raw load at the machine's outfall, before treatment; degraded additive counts in full.
 * @source Mass balance; COD by small tube as in ISO 15705.
 * @words effluent load, permit, oxygen demand
 * @example =WETEND.EFFLUENT.COD(8, 0.82, 340, 1.1) → 538.56
 * @requiresAddress
 */
export function effluentCod(
  dose: any[][],
  overallRetention: any[][],
  production: any[][],
  factor: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return cod(dose, overallRetention, production, factor, invocation);
}

const bod = elementwise("EFFLUENT.BOD", [dose, overallRetention, production, factor], effluentLoad);

/**
 * Biochemical oxygen demand that the unretained additive brings, before treatment. It is not the chemical
 * oxygen demand: give the additive's own measured factor.
 * @customfunction EFFLUENT.BOD
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param overallRetention Share that stays in the sheet with the loop closed [fraction]; 0 to 1.
 * @param production Oven-dry furnish that the dose is given on [t/d]; 0 or more.
 * @param factor Biochemical oxygen demand of the dry additive [g/g]; 0 to 8.
 * @returns Raw load of biochemical oxygen demand [kg/d].
 * @equation \text{BOD} = \text{dose}\,(1 - R)\,\text{production} \cdot \text{factor}
 * @range Raw load at the machine's outfall, before treatment; degraded additive counts in full.
 * @source Mass balance.
 * @words effluent load, BOD5, permit, biological
 * @example =WETEND.EFFLUENT.BOD(8, 0.82, 340, 0.65) → 318.24
 * @requiresAddress
 */
export function effluentBod(
  dose: any[][],
  overallRetention: any[][],
  production: any[][],
  factor: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return bod(dose, overallRetention, production, factor, invocation);
}

const nitrogenLoad = elementwise(
  "EFFLUENT.NITROGEN",
  [dose, overallRetention, production, quantity("nitrogen", "fraction", upToOne)],
  effluentLoad,
);

/**
 * Nitrogen that the unretained additive brings, before treatment. It is bound in the additive: whether a
 * plant turns it into ammonia or nitrate depends on the additive and the plant.
 * @customfunction EFFLUENT.NITROGEN
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param overallRetention Share that stays in the sheet with the loop closed [fraction]; 0 to 1.
 * @param production Oven-dry furnish that the dose is given on [t/d]; 0 or more.
 * @param nitrogen Nitrogen in the dry additive by mass [fraction]; 0 to 1.
 * @returns Raw load of nitrogen [kg/d].
 * @equation \text{nitrogen load} = \text{dose}\,(1 - R)\,\text{production} \cdot \text{nitrogen}
 * @range Raw load at the machine's outfall, before treatment.
 * @source Mass balance.
 * @words total nitrogen, effluent load, permit, nutrient
 * @example =WETEND.EFFLUENT.NITROGEN(8, 0.82, 340, 0.293%) → 1.434528
 * @requiresAddress
 */
export function effluentNitrogen(
  dose: any[][],
  overallRetention: any[][],
  production: any[][],
  nitrogen: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return nitrogenLoad(dose, overallRetention, production, nitrogen, invocation);
}

const concentration = elementwise(
  "EFFLUENT.CONCENTRATION",
  [quantity("load", "kg/d", notNegative), quantity("flow", "m³/d", aboveZero)],
  effluentConcentration,
);

/**
 * Concentration of a load in the flow that carries it.
 * @customfunction EFFLUENT.CONCENTRATION
 * @param load Load [kg/d]; 0 or more.
 * @param flow Flow of effluent [m³/d]; above 0.
 * @returns Concentration [mg/L].
 * @equation c = \frac{1000 \cdot \text{load}}{\text{flow}}
 * @range Daily means.
 * @source Mass balance.
 * @words mg per litre, effluent flow
 * @example =WETEND.EFFLUENT.CONCENTRATION(538.56, 4800) → 112.2
 * @requiresAddress
 */
export function effluentConcentrationOf(
  load: any[][],
  flow: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return concentration(load, flow, invocation);
}

const allowance = elementwise(
  "EFFLUENT.ALLOWANCE",
  [
    quantity("limit", "kg/d", notNegative),
    quantity("background", "kg/d", notNegative),
    overallRetention,
    production,
    factor,
    optionalQuantity("removal", "fraction", belowOne, 0),
    optionalQuantity("margin", "fraction", belowOne, 0),
  ],
  largestDoseWithin,
);

/**
 * Largest dose that keeps the discharge within its limit, beside what everything else brings.
 * @customfunction EFFLUENT.ALLOWANCE
 * @param limit Permitted load of the discharge, after the treatment plant if there is one [kg/d]; 0 or more.
 * @param background Raw load of all else in that water, before the plant [kg/d]; 0 or more.
 * @param overallRetention Share of the additive that stays in the sheet with the loop closed [fraction]; 0 to 1.
 * @param production Oven-dry furnish that the dose is given on [t/d]; 0 or more.
 * @param factor Oxygen demand of the dry additive, of the kind that the limit is set in [g/g]; 0 to 8.
 * @param [removal] Share of the load that the plant removes [fraction]; from 0, below 1; 0 if left out.
 * @param [margin] Share of the limit that is kept free [fraction]; from 0, below 1; 0 if left out.
 * @returns Largest dose of dry active additive within the limit [kg/t]; #N/A if the background alone is over.
 * @equation \text{dose} = \frac{\dfrac{\text{limit}\,(1 - \text{margin})}{1 - \text{removal}} - \text{background}}{(1 - R)\,\text{production} \cdot \text{factor}}
 * @range The plant removes the same share of the additive's load as of the rest. The permit and its authority decide, not this figure.
 * @source Mass balance.
 * @words permit, consent, allowed dose, effluent limit, how much may I add
 * @example =WETEND.EFFLUENT.ALLOWANCE(900, 500, 0.82, 340, 1.1, 0, 0.1) → 4.604872252
 * @requiresAddress
 */
export function effluentAllowance(
  limit: any[][],
  background: any[][],
  overallRetention: any[][],
  production: any[][],
  factor: any[][],
  removal: any[][],
  margin: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return allowance(
    limit,
    background,
    overallRetention,
    production,
    factor,
    removal,
    margin,
    invocation,
  );
}
