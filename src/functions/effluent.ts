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
import { populationEquivalents } from "../model/effluent/equivalents";
import { effluentLoad } from "../model/effluent/load";
import { additiveLoss } from "../model/effluent/loss";
import { theoreticalOxygenDemand } from "../model/effluent/oxygen-demand";
import { aerobicTreatment } from "../model/effluent/treatment";

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
 * @equation \text{dose} = \frac{\text{limit}\,(1 - \text{margin}) / (1 - \text{removal}) - \text{background}}{(1 - R)\,\text{production} \cdot \text{factor}}
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

const price = (name: string, unit: string) => optionalQuantity(name, unit, notNegative, 0);

const treatment = whole(
  "EFFLUENT.TREATMENT",
  [
    quantity("cod", "kg/d", notNegative),
    quantity("bod", "kg/d", notNegative),
    price("powerPrice", "money per kWh"),
    price("sludgePrice", "money per kg dry"),
    price("nitrogenPrice", "money per kg N"),
    price("phosphorusPrice", "money per kg P"),
    optionalQuantity("oxygenPerBod", "kg O₂/kg BOD", aboveZero, 1),
    optionalQuantity("aeration", "kg O₂/kWh", aboveZero, 1.5),
    optionalQuantity("sludgeYield", "kg/kg BOD", notNegative, 0.45),
  ],
  (cod, bod, power, sludge, nitrogen, phosphorus, oxygenPerBod, aeration, sludgeYield) => {
    const day = aerobicTreatment(
      cod,
      bod,
      { power, sludge, nitrogen, phosphorus },
      { oxygenPerBod, aeration, sludgeYield },
    );
    return [
      ["aerobic treatment", "amount", "cost [money/d]"],
      ["oxygen [kg/d]", day.oxygen, ""],
      ["aeration power [kWh/d]", day.aerationPower, day.powerCost],
      ["dry sludge [kg/d]", day.sludge, day.sludgeCost],
      ["nitrogen needed [kg/d]", day.nitrogen, day.nitrogenCost],
      ["phosphorus needed [kg/d]", day.phosphorus, day.phosphorusCost],
      ["total", "", day.totalCost],
      ["BOD per COD [kg/kg]", day.treatableShare ?? "", ""],
    ];
  },
);

/**
 * What a day of aerobic biological treatment of a load takes and costs. Nutrients that the water already
 * holds need not be bought. The last line says how much of the COD an aerobic plant can take hold of.
 * @customfunction EFFLUENT.TREATMENT
 * @param cod Chemical oxygen demand [kg/d]; not below the biochemical.
 * @param bod Biochemical oxygen demand of five days [kg/d]; 0 or more.
 * @param [powerPrice] Price of power [money per kWh]; 0 or more; 0 if left out.
 * @param [sludgePrice] Price of getting rid of dry sludge [money per kg dry]; 0 or more; 0 if left out.
 * @param [nitrogenPrice] Price of nitrogen as nutrient [money per kg N]; 0 or more; 0 if left out.
 * @param [phosphorusPrice] Price of phosphorus as nutrient [money per kg P]; 0 or more; 0 if left out.
 * @param [oxygenPerBod] Oxygen that the plant must give [kg O₂/kg BOD]; above 0; 1 if left out.
 * @param [aeration] Oxygen that the aerators bring in, in the field [kg O₂/kWh]; above 0; 1.5 if left out (1.0 to 2.5 typical, from memory).
 * @param [sludgeYield] Dry sludge that grows [kg/kg BOD]; 0 or more; 0.45 if left out (0.3 to 0.6 typical, from memory).
 * @returns Table: oxygen, aeration power, dry sludge, nitrogen, phosphorus, total, BOD per COD [kg/d or kWh/d, and money/d].
 * @equation \text{oxygen} = a \cdot \text{BOD}, \quad \text{power} = \frac{\text{oxygen}}{\text{aeration}}, \quad \text{sludge} = y \cdot \text{BOD}, \quad \text{BOD} : N : P = 100 : 5 : 1
 * @range Aerobic treatment that removes all of the BOD, without nitrification. Anaerobic plants are not covered.
 * @source BOD : N : P = 100 : 5 : 1 is common practice, no source; the other defaults are typical, from memory.
 * @words activated sludge, aeration cost, treatment cost, nutrients, effluent plant
 * @example =WETEND.EFFLUENT.TREATMENT(1000, 600, 0.1, 0.2, 1.5, 4) → {"aerobic treatment","amount","cost [money/d]";"oxygen [kg/d]",600,"";"aeration power [kWh/d]",400,40;"dry sludge [kg/d]",270,54;"nitrogen needed [kg/d]",30,45;"phosphorus needed [kg/d]",6,24;"total","",163;"BOD per COD [kg/kg]",0.6,""}
 * @requiresAddress
 */
export function effluentTreatment(
  cod: any[][],
  bod: any[][],
  powerPrice: any[][],
  sludgePrice: any[][],
  nitrogenPrice: any[][],
  phosphorusPrice: any[][],
  oxygenPerBod: any[][],
  aeration: any[][],
  sludgeYield: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return treatment(
    cod,
    bod,
    powerPrice,
    sludgePrice,
    nitrogenPrice,
    phosphorusPrice,
    oxygenPerBod,
    aeration,
    sludgeYield,
    invocation,
  );
}

const equivalents = elementwise(
  "EFFLUENT.EQUIVALENTS",
  [quantity("bod", "kg/d", notNegative), optionalQuantity("perPerson", "kg/d", aboveZero, 0.06)],
  populationEquivalents,
);

/**
 * People whose sewage would bring the same biochemical oxygen demand: the measure that towns and permits use.
 * @customfunction EFFLUENT.EQUIVALENTS
 * @param bod Biochemical oxygen demand of five days [kg/d]; 0 or more.
 * @param [perPerson] Demand of one person [kg/d]; above 0; 0.06 if left out.
 * @returns Population equivalents [persons].
 * @equation \text{equivalents} = \frac{\text{BOD}}{\text{per person}}
 * @range Raw loads of five-day biochemical oxygen demand.
 * @source Directive 91/271/EEC, article 2: 60 g of oxygen per day.
 * @words population equivalent, PE, inhabitants, municipal plant
 * @example =WETEND.EFFLUENT.EQUIVALENTS(318.24) → 5304
 * @requiresAddress
 */
export function effluentEquivalents(
  bod: any[][],
  perPerson: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return equivalents(bod, perPerson, invocation);
}
