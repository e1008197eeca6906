import { elementwise } from "../cells/elementwise";
import { aboveZero, notNegative, optionalQuantity, quantity } from "../cells/quantity";
import { whole } from "../cells/whole";
import { populationEquivalents } from "../model/effluent/equivalents";
import { aerobicTreatment } from "../model/effluent/treatment";

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
