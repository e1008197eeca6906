import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  aboveZeroUpTo,
  notNegative,
  optionalQuantity,
  quantity,
} from "../cells/quantity";
import { parityPrice } from "../model/cost/parity";
import { costPerGain } from "../model/cost/per-gain";

const price = quantity("price", "money/kg", notNegative);
const increase = quantity("increase", "N·m/g", aboveZero);
const otherCost = optionalQuantity("otherCost", "money/t", notNegative, 0);

const additive = elementwise(
  "COST.ADDITIVE",
  [quantity("dose", "kg/t", notNegative), price, increase, otherCost],
  costPerGain,
);

/**
 * What each unit of strength costs by an additive, on average over the whole gain. Where the response
 * saturates the next unit costs more: COST.MARGINAL.
 * @customfunction COST.ADDITIVE
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param price Price of dry active additive [money/kg]; 0 or more.
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
    quantity("powerPrice", "money/kWh", notNegative),
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
 * @param powerPrice Price of power [money/kWh]; 0 or more.
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

const parity = elementwise(
  "COST.PARITY",
  [
    price,
    quantity("retention", "fraction", aboveZeroUpTo(1)),
    quantity("otherRetention", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("lossPrice", "money per kg lost", notNegative, 0),
    optionalQuantity("relativeEffect", "effect per kg kept, other over this", aboveZero, 1),
  ],
  parityPrice,
);

/**
 * Price at which another additive costs the same per unit of effect kept in the sheet. A native starch of
 * which a tenth stays is worth a tenth of one that stays whole (common practice, no source). Not advice to buy.
 * @customfunction COST.PARITY
 * @param price Price of this dry active additive [money/kg]; 0 or more.
 * @param retention Overall retention of this additive [fraction]; above 0, up to 1.
 * @param otherRetention Overall retention of the other additive [fraction]; above 0, up to 1.
 * @param [lossPrice] What a kilogram that leaves with the water costs [money per kg lost]; 0 or more; 0 if left out.
 * @param [relativeEffect] Effect of a kilogram of the other kept, over that of this one [effect per kg kept, other over this]; above 0; 1 if left out.
 * @returns Price per kg of the other dry active additive that costs the same [money/kg]; below 0 where its losses alone cost more.
 * @equation p_o = e\,r_o\,\frac{p + (1 - r)\,\ell}{r} - (1 - r_o)\,\ell
 * @range Equal effect for each kilogram kept, but for relativeEffect.
 * @source Equal cost per unit of effect kept (derivation in the equation).
 * @words break-even price, native against cationic, worth its price, ten times
 * @example =WETEND.COST.PARITY(0.5, 0.1, 1, 0.15) → 6.35
 * @example =WETEND.COST.PARITY(0.5, 0.1, 1) → 5
 * @requiresAddress
 */
export function costParity(
  price: any[][],
  retention: any[][],
  otherRetention: any[][],
  lossPrice: any[][],
  relativeEffect: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return parity(price, retention, otherRetention, lossPrice, relativeEffect, invocation);
}
