import { cases } from "../cells/cases";
import { choice } from "../cells/choice";
import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  aboveZeroUpTo,
  belowOne,
  notNegative,
  optionalQuantity,
  quantity,
  stockConsistency,
  upToOne,
} from "../cells/quantity";
import { vector } from "../cells/vector";
import { convertDose, DOSE_UNITS } from "../model/dose/convert";
import { productDose } from "../model/dose/product";
import { pumpFlow } from "../model/dose/pump";
import { stockThroughput } from "../model/dose/stock-flow";
import { surfaceLimit } from "../model/dose/surface-limit";
import { targetDose } from "../model/dose/target";
import { machineThroughput } from "../model/dose/throughput";

const dose = quantity("dose", "kg/t", notNegative);

const target = elementwise(
  "DOSE.TARGET",
  [
    quantity("retained", "kg/t", notNegative),
    quantity("overallRetention", "fraction", aboveZeroUpTo(1)),
  ],
  targetDose,
);

/**
 * Dose to add so that the wanted amount of additive stays in the sheet. Retention itself falls as the
 * surfaces fill, so take the retention measured or computed near this dose, not the one at a small dose.
 * @customfunction DOSE.TARGET
 * @param retained Additive wanted in the sheet [kg/t]; 0 or more.
 * @param overallRetention Share of the additive that stays in the sheet with the loop closed [fraction]; above 0, up to 1.
 * @returns Dose of dry active additive [kg/t].
 * @equation \text{dose} = \frac{\text{retained}}{R}
 * @range Any dose below the one that fills the surfaces (DOSE.SURFACELIMIT); retention is taken as constant.
 * @source Mass balance.
 * @words how much to add, retention-adjusted dose, starch kept in the sheet
 * @example =WETEND.DOSE.TARGET(6.5, 0.82) → 7.926829268
 * @requiresAddress
 */
export function doseTarget(
  retained: any[][],
  overallRetention: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return target(retained, overallRetention, invocation);
}

const product = elementwise(
  "DOSE.PRODUCT",
  [
    dose,
    quantity("solids", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("active", "fraction", aboveZeroUpTo(1), 1),
  ],
  productDose,
);

/**
 * Product as received that carries a dose of dry active additive.
 * @customfunction DOSE.PRODUCT
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param solids Dry solids of the product as received [fraction]; above 0, up to 1.
 * @param [active] Active part of the dry solids [fraction]; above 0, up to 1; 1 if left out.
 * @returns Dose of product as received [kg/t].
 * @equation \text{product} = \frac{\text{dose}}{\text{solids} \cdot \text{active}}
 * @range Any product whose solids and active part are known.
 * @source Mass balance.
 * @words as received, as delivered, commercial product, moisture of the powder
 * @example =WETEND.DOSE.PRODUCT(8, 0.88) → 9.090909091
 * @requiresAddress
 */
export function doseProduct(
  dose: any[][],
  solids: any[][],
  active: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return product(dose, solids, active, invocation);
}

/**
 * The units of a dose.
 * @customenum {string}
 */
declare enum DoseUnit {
  /** kg of dry additive per tonne of oven-dry furnish */
  ovenDry = "kg/t",
  /** kg of dry additive per tonne of air-dry furnish */
  airDry = "kg/t air-dry",
  /** lb of dry additive per short ton of oven-dry furnish */
  shortTon = "lb/short ton",
  /** kg of dry additive per kg of oven-dry furnish */
  fraction = "fraction",
  /** g of dry additive per tonne of oven-dry furnish */
  grams = "g/t",
}

const convert = elementwise(
  "DOSE.CONVERT",
  [
    quantity("value", "in the unit that it is given in", notNegative),
    choice("from", DOSE_UNITS),
    choice("to", DOSE_UNITS),
    optionalQuantity("moisture", "fraction", belowOne, 0.1),
  ],
  convertDose,
);

/**
 * A dose in another unit. Only "kg/t air-dry" uses the moisture. An air-dry tonne of pulp is 900 kg oven-dry
 * (common practice, no source); paper is not pulp: it holds 5 to 7 % water, so give its own moisture.
 * @customfunction DOSE.CONVERT
 * @param value Dose to convert [in the unit that it is given in]; 0 or more.
 * @param from Unit of the value [one of: kg/t, kg/t air-dry, lb/short ton, fraction, g/t].
 * @param to Unit of the answer [one of: kg/t, kg/t air-dry, lb/short ton, fraction, g/t].
 * @param [moisture] Water in the air-dry tonne [fraction]; from 0, below 1; 0.1 if left out.
 * @returns The dose [in the unit asked for].
 * @equation 1\,\text{kg/t} = 2\,\text{lb/short ton} = 1000\,\text{g/t} = 0.001 = (1 - \text{moisture})\,\text{kg/t air-dry}
 * @range Any dose.
 * @source Definition of the units: 1 short ton = 2000 lb.
 * @words pounds per ton, percent, grams per tonne, air dry, bone dry, oven dry
 * @example =WETEND.DOSE.CONVERT(16, "lb/short ton", "kg/t") → 8
 * @requiresAddress
 */
export function doseConvert(
  value: any[][],
  from: DoseUnit,
  to: DoseUnit,
  moisture: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return convert(value, from, to, moisture, invocation);
}

const throughput = elementwise(
  "DOSE.THROUGHPUT",
  [
    quantity("speed", "m/min", notNegative),
    quantity("width", "m", aboveZero),
    quantity("grammage", "g/m²", aboveZero),
    optionalQuantity("moisture", "fraction", belowOne, 0.07),
  ],
  machineThroughput,
);

/**
 * Oven-dry throughput of a paper machine from what the reel shows. It is the furnish that leaves as paper:
 * broke that goes round and solids lost with the water come on top.
 * @customfunction DOSE.THROUGHPUT
 * @param speed Speed of the machine at the reel [m/min]; 0 or more.
 * @param width Width of the web at the reel [m]; above 0.
 * @param grammage Grammage of the paper as it is, with its moisture [g/m²]; above 0.
 * @param [moisture] Water in the paper by mass [fraction]; from 0, below 1; 0.07 if left out.
 * @returns Oven-dry throughput [t/h].
 * @equation \text{throughput} = \frac{60 \cdot \text{speed} \cdot \text{width} \cdot \text{grammage}}{10^6}\,(1 - \text{moisture})
 * @range Steady running, one web; speed, width and grammage at one place.
 * @source Dimensions of the quantities.
 * @words production rate, tonnes per hour, reel speed, trim width, basis weight
 * @example =WETEND.DOSE.THROUGHPUT(800, 5, 100) → 22.32
 * @requiresAddress
 */
export function doseThroughput(
  speed: any[][],
  width: any[][],
  grammage: any[][],
  moisture: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return throughput(speed, width, grammage, moisture, invocation);
}

const stockFlow = elementwise(
  "DOSE.STOCKFLOW",
  [
    quantity("flow", "m³/h", notNegative),
    quantity("consistency", "fraction", stockConsistency),
    optionalQuantity("density", "t/m³", aboveZero, 1),
  ],
  stockThroughput,
);

/**
 * Oven-dry throughput of a stock line. A dose on stock flow counts broke that comes round each time that it
 * passes: keep to one basis, stock or paper made.
 * @customfunction DOSE.STOCKFLOW
 * @param flow Flow of stock [m³/h]; 0 or more.
 * @param consistency Oven-dry solids in the stock by mass [fraction]; above 0, up to 0.25.
 * @param [density] Density of the stock [t/m³]; above 0; 1 if left out.
 * @returns Oven-dry throughput [t/h].
 * @equation \text{throughput} = \text{flow} \cdot \text{density} \cdot \text{consistency}
 * @range Stock without much air; flow and consistency at one place.
 * @source Definition of consistency.
 * @words stock flow, thick stock, tonnes per hour, consistency meter
 * @example =WETEND.DOSE.STOCKFLOW(400, 3.5%) → 14
 * @requiresAddress
 */
export function doseStockFlow(
  flow: any[][],
  consistency: any[][],
  density: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return stockFlow(flow, consistency, density, invocation);
}

const pump = elementwise(
  "DOSE.PUMP",
  [
    dose,
    quantity("throughput", "t/h oven-dry", notNegative),
    quantity("strength", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("density", "kg/L", aboveZero, 1),
  ],
  pumpFlow,
);

/**
 * Flow of additive solution that the dosing pump must give. The other way round, a flow that was read gives
 * the dose: flow · strength · density / throughput.
 * @customfunction DOSE.PUMP
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param throughput Oven-dry furnish that passes the dosing point [t/h]; 0 or more.
 * @param strength Dry active additive in the solution by mass [fraction]; above 0, up to 1.
 * @param [density] Density of the solution [kg/L]; above 0; 1 if left out.
 * @returns Flow of solution [L/h].
 * @equation \text{flow} = \frac{\text{dose} \cdot \text{throughput}}{\text{strength} \cdot \text{density}}
 * @range Any solution whose strength and density are known at the temperature of the pump.
 * @source Mass balance.
 * @words pump setting, litres per hour, dosing, feed rate, dose from flow
 * @example =WETEND.DOSE.PUMP(8, 9.3, 0.03, 1.01) → 2455.445545
 * @requiresAddress
 */
export function dosePump(
  dose: any[][],
  throughput: any[][],
  strength: any[][],
  density: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return pump(dose, throughput, strength, density, invocation);
}

const byCase = { byCase: true };

const fullSurface = cases(
  "DOSE.SURFACELIMIT",
  [
    vector("shares", "n", "fraction", upToOne, byCase),
    vector("surfaces", "n", "m²/g", aboveZero, byCase),
    vector("capacities", "n", "mg/m²", aboveZero, byCase),
  ],
  surfaceLimit,
);

/**
 * Dose that fills every site of the furnish: a ceiling. What is added above it stays dissolved, and at
 * equilibrium a part does so well below it.
 * @customfunction DOSE.SURFACELIMIT
 * @param shares Mass share of each component [fraction]; 0 to 1, sum 1; a row or a column, or a block with one case a row.
 * @param surfaces Specific surface of each component [m²/g]; above 0.
 * @param capacities Additive that a full surface holds [mg/m²]; above 0.
 * @returns Dose that fills every site [kg/t].
 * @equation \text{dose} = \sum_i m_i s_i \Gamma_i
 * @range Independent sites; capacities of this additive on these surfaces, from a beaker test.
 * @source Plateau of the Langmuir isotherm: Langmuir, J. Am. Chem. Soc. 40 (1918) 1361.
 * @words saturation, full surface, maximum adsorption, overdose
 * @example =WETEND.DOSE.SURFACELIMIT({0.55,0.25,0.2}, {1.5,8,12}, {8,10,1.667}) → 30.6008
 * @requiresAddress
 */
export function doseSurfaceLimit(
  shares: any[][],
  surfaces: any[][],
  capacities: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return fullSurface(shares, surfaces, capacities, invocation);
}
