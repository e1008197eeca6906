import { choice } from "../cells/choice";
import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  aboveZeroUpTo,
  anyNumber,
  notNegative,
  optionalQuantity,
  oxygenDemand,
  quantity,
  quantityOrNone,
  upToOne,
} from "../cells/quantity";
import { whole } from "../cells/whole";
import { activePrice } from "../model/cost/active-price";
import { effluentCost } from "../model/cost/effluent";
import { grammageSaving, NOT_CHECKED } from "../model/cost/grammage";
import { marginalCost } from "../model/cost/marginal";
import { parityPrice } from "../model/cost/parity";
import { costPerGain } from "../model/cost/per-gain";
import { shapes } from "../model/strength/response";

const price = quantity("price", "money/kg", aboveZero);
const increase = quantity("increase", "N·m/g", aboveZero);
const otherCost = optionalQuantity("otherCost", "money/t", notNegative, 0);

const dryActive = elementwise(
  "COST.ACTIVEPRICE",
  [
    quantity("price", "money per kg as received", aboveZero),
    quantity("solids", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("active", "fraction", aboveZeroUpTo(1), 1),
    optionalQuantity("freight", "money per kg as received", notNegative, 0),
  ],
  activePrice,
);

/**
 * Price of dry active additive from an invoice. Every price in the other functions is of this kind, so that
 * products of different strength compare.
 * @customfunction COST.ACTIVEPRICE
 * @param price Price of the product [money per kg as received]; above 0.
 * @param solids Dry solids of the product as received [fraction]; above 0, up to 1.
 * @param [active] Active part of the dry solids [fraction]; above 0, up to 1; 1 if left out.
 * @param [freight] Freight and handling for each kilogram: those of an invoice over its kilograms [money per kg as received]; 0 or more; 0 if left out.
 * @returns Price of dry active additive [money/kg].
 * @equation p = \frac{\text{price} + \text{freight}}{\text{solids} \cdot \text{active}}
 * @range Any product whose solids and active part are known.
 * @source Mass balance.
 * @words invoice, price per kilogram, as delivered, dry basis
 * @example =WETEND.COST.ACTIVEPRICE(0.66, 0.88, 1, 0.022) → 0.775
 * @requiresAddress
 */
export function costActivePrice(
  price: any[][],
  solids: any[][],
  active: any[][],
  freight: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return dryActive(price, solids, active, freight, invocation);
}

const additive = elementwise(
  "COST.ADDITIVE",
  [quantity("dose", "kg/t", notNegative), price, increase, otherCost],
  costPerGain,
);

/**
 * What each unit of strength costs with an additive, on average over the whole gain. Where the response
 * saturates the next unit costs more: COST.MARGINAL.
 * @customfunction COST.ADDITIVE
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param price Price of dry active additive [money/kg]; above 0.
 * @param increase Tensile index actually gained by that dose [N·m/g]; above 0.
 * @param [otherCost] Further cost of dosing it: effluent, cooking, labour [money/t]; 0 or more; 0 if left out.
 * @returns Cost of each unit of tensile index gained, per tonne [money/t per N·m/g].
 * @equation \text{cost} = \frac{\text{dose} \cdot \text{price} + \text{other}}{\text{increase}}
 * @range An average over the gain; not the cost of the next unit.
 * @source Definition.
 * @words cost per unit of strength, starch cost, unit cost, money per tonne
 * @example =WETEND.COST.ADDITIVE(8, 0.6, 5) → 0.96
 * @requiresAddress
 */
export function costAdditive(
  dose: any[][],
  price: any[][],
  increase: any[][],
  otherCost: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return additive(dose, price, increase, otherCost, invocation);
}

const refining = elementwise(
  "COST.REFINING",
  [
    quantity("energy", "kWh/t", notNegative),
    quantity("powerPrice", "money/kWh", aboveZero),
    increase,
    otherCost,
  ],
  costPerGain,
);

/**
 * What each unit of strength costs by refining, on average over the whole gain. Take net energy, the no-load
 * power left out, and put the cost of slower drainage into otherCost.
 * @customfunction COST.REFINING
 * @param energy Net refining energy [kWh/t]; 0 or more.
 * @param powerPrice Price of power [money/kWh]; above 0.
 * @param increase Tensile index actually gained by that refining [N·m/g]; above 0.
 * @param [otherCost] Further cost of refining: slower drainage, drying, plate wear [money/t]; 0 or more; 0 if left out.
 * @returns Cost of each unit of tensile index gained, per tonne [money/t per N·m/g].
 * @equation \text{cost} = \frac{\text{energy} \cdot \text{price} + \text{other}}{\text{increase}}
 * @range An average over the gain; not the cost of the next unit.
 * @source Definition.
 * @words refining cost, power cost, beating, grinding
 * @example =WETEND.COST.REFINING(40, 0.1, 5) → 0.8
 * @requiresAddress
 */
export function costRefining(
  energy: any[][],
  powerPrice: any[][],
  increase: any[][],
  otherCost: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return refining(energy, powerPrice, increase, otherCost, invocation);
}

/**
 * The shapes of a response curve.
 * @customenum {string}
 */
declare enum ResponseShape {
  /** Rises ever more slowly to a plateau */
  exponential = "exponential",
  /** Rises to a plateau that it reaches late */
  hyperbolic = "hyperbolic",
  /** Rises to a peak and falls again */
  peaked = "peaked",
  /** Rises in proportion to the dose */
  straight = "straight",
}

const marginal = elementwise(
  "COST.MARGINAL",
  [
    quantity("dose", "kg/t", notNegative),
    price,
    quantity("plateauGain", "N·m/g", anyNumber),
    quantity("scale", "kg/t", aboveZero),
    choice("shape", shapes, "exponential"),
  ],
  marginalCost,
);

/**
 * What the next unit of strength costs at a dose. On a curve that levels off it is above the average
 * (COST.ADDITIVE), and it decides whether to add more here or elsewhere.
 * @customfunction COST.MARGINAL
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param price Price of dry active additive [money/kg]; above 0.
 * @param plateauGain Gain that the curve reaches in the end; for "straight" the gain per kg/t [N·m/g]; any number.
 * @param scale Scale of the curve, as STRENGTH.FIT gives it; not used for "straight" [kg/t]; above 0.
 * @param [shape] Shape of the curve [one of: exponential, hyperbolic, peaked, straight]; exponential if left out.
 * @returns Cost of the next unit of tensile index at this dose, per tonne [money/t per N·m/g]; #N/A where the curve no longer rises.
 * @equation \text{cost} = \frac{\text{price}}{\mathrm{d}S/\mathrm{d}x}
 * @range Within the doses that the curve was fitted to.
 * @source Derivative of the response of STRENGTH.RESPONSE.
 * @words next unit, diminishing returns, saturating, marginal cost
 * @example =WETEND.COST.MARGINAL(8, 0.6, 10, 4) → 1.773373464
 * @requiresAddress
 */
export function costMarginal(
  dose: any[][],
  price: any[][],
  plateauGain: any[][],
  scale: any[][],
  shape: ResponseShape,
  invocation: CustomFunctions.Invocation,
): any[][] {
  return marginal(dose, price, plateauGain, scale, shape, invocation);
}

const parity = elementwise(
  "COST.PARITY",
  [
    price,
    quantity("retention", "fraction", aboveZeroUpTo(1)),
    quantity("otherRetention", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("lossPrice", "money per kg lost", notNegative, 0),
    optionalQuantity("relativeEffect", "effect per kg kept, other over this", aboveZero, 1),
    quantityOrNone("otherLossPrice", "money per kg lost", notNegative),
  ],
  parityPrice,
);

/**
 * Price at which another additive costs the same per unit of effect kept in the sheet. A native starch of
 * which a tenth stays is worth a tenth of one that stays whole (common practice, no source). Not advice to buy.
 * @customfunction COST.PARITY
 * @param price Price of this dry active additive [money/kg]; above 0.
 * @param retention Overall retention of this additive [fraction]; above 0, up to 1.
 * @param otherRetention Overall retention of the other additive [fraction]; above 0, up to 1.
 * @param [lossPrice] What a kilogram that leaves with the water costs: effluent charge per kg COD, times the g COD of a gram [money per kg lost]; 0 or more; 0 if left out.
 * @param [relativeEffect] Effect of a kilogram of the other kept, over that of this one [effect per kg kept, other over this]; above 0; 1 if left out.
 * @param [otherLossPrice] The same as lossPrice for the other, by its own oxygen demand [money per kg lost]; 0 or more; lossPrice if left out.
 * @returns Price per kg of the other dry active additive that costs the same [money/kg]; below 0 where its losses alone cost more.
 * @equation p_o = e\,r_o\,\frac{p + (1 - r)\,\ell}{r} - (1 - r_o)\,\ell_o
 * @range Equal effect for each kilogram kept, but for relativeEffect.
 * @source Equal cost per unit of effect kept (derivation in the equation).
 * @words break-even price, native against cationic, worth its price, dearer additive, price parity
 * @example =WETEND.COST.PARITY(0.5, 0.1, 1, 0.15) → 6.35
 * @example =WETEND.COST.PARITY(0.5, 0.1, 1) → 5
 * @example =WETEND.COST.PARITY(0.5, 0.2, 0.8, 0.22, 1, 0.33) → 2.638
 * @requiresAddress
 */
export function costParity(
  price: any[][],
  retention: any[][],
  otherRetention: any[][],
  lossPrice: any[][],
  relativeEffect: any[][],
  otherLossPrice: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return parity(
    price,
    retention,
    otherRetention,
    lossPrice,
    relativeEffect,
    otherLossPrice,
    invocation,
  );
}

const treatment = elementwise(
  "COST.EFFLUENT",
  [
    quantity("dose", "kg/t", notNegative),
    quantity("overallRetention", "fraction", upToOne),
    quantity("treatmentPrice", "money per kg COD", aboveZero),
    quantity("factor", "g/g", oxygenDemand),
  ],
  effluentCost,
);

/**
 * What the oxygen demand of unretained additive costs to treat, per tonne of furnish.
 * @customfunction COST.EFFLUENT
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param overallRetention Share that stays in the sheet with the loop closed [fraction]; 0 to 1.
 * @param treatmentPrice Cost of treating, or charge for discharging [money per kg COD]; above 0.
 * @param factor Chemical oxygen demand of the dry additive [g/g]; 0 to 8.
 * @returns Cost of treatment [money/t].
 * @equation \text{cost} = \text{dose}\,(1 - R) \cdot \text{factor} \cdot \text{price}
 * @range A charge in proportion to the load.
 * @source Mass balance.
 * @words effluent charge, treatment cost, sewer charge, cost of lost starch
 * @example =WETEND.COST.EFFLUENT(8, 0.82, 0.25, 1.1) → 0.396
 * @requiresAddress
 */
export function costEffluent(
  dose: any[][],
  overallRetention: any[][],
  treatmentPrice: any[][],
  factor: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return treatment(dose, overallRetention, treatmentPrice, factor, invocation);
}

const lighter = whole(
  "COST.GRAMMAGE",
  [
    quantity("requiredStrength", "kN/m", aboveZero),
    quantity("index", "N·m/g", aboveZero),
    quantity("newIndex", "N·m/g", aboveZero),
    quantity("fibrePrice", "money/t", aboveZero),
    optionalQuantity("addedCost", "money per t of paper", anyNumber, 0),
  ],
  (...values) => {
    const { before, after, fibreSaved, netSaving } = grammageSaving(...values);
    return [
      ["grammage before [g/m²]", before],
      ["grammage after [g/m²]", after],
      ["fibre saved [kg per 1,000 m²]", fibreSaved],
      ["net saving [money per 1,000 m²]", netSaving],
      ["not checked", NOT_CHECKED],
    ];
  },
);

/**
 * Strength gained turned into less fibre at equal strength of the sheet. Other properties are not checked:
 * stiffness, opacity, bulk and runnability often forbid a lighter sheet.
 * @customfunction COST.GRAMMAGE
 * @param requiredStrength Tensile strength that the sheet must have [kN/m]; above 0.
 * @param index Tensile index as it is [N·m/g]; above 0.
 * @param newIndex Tensile index with the additive [N·m/g]; above 0.
 * @param fibrePrice Price of fibre [money/t]; above 0.
 * @param [addedCost] What the additive adds to the cost of the paper [money per t of paper]; any number; 0 if left out.
 * @returns Table: grammage before and after, fibre saved, net saving, and what is not checked [g/m², kg and money per 1,000 m²].
 * @equation g = \frac{1000 \cdot \text{strength}}{\text{index}}, \quad \text{net} = \frac{(g_1 - g_2)\,p_\text{fibre} - g_2\,\text{added}}{1000}
 * @range Fibre and paper oven-dry; an index that does not change with grammage.
 * @source Definition of the tensile index: ISO 1924-2.
 * @words lightweighting, basis weight, fibre saving, lower grammage
 * @example =WETEND.COST.GRAMMAGE(3.6, 60, 64, 500, 5) → {"grammage before [g/m²]",60;"grammage after [g/m²]",56.25;"fibre saved [kg per 1,000 m²]",3.75;"net saving [money per 1,000 m²]",1.59375;"not checked","stiffness, opacity, bulk, formation and runnability"}
 * @requiresAddress
 */
export function costGrammage(
  requiredStrength: any[][],
  index: any[][],
  newIndex: any[][],
  fibrePrice: any[][],
  addedCost: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return lighter(requiredStrength, index, newIndex, fibrePrice, addedCost, invocation);
}
