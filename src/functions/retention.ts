import { cases } from "../cells/cases";
import { elementwise } from "../cells/elementwise";
import {
  aboveZero,
  aboveZeroUpTo,
  notNegative,
  optionalQuantity,
  quantity,
  quantityOrNone,
  upToOne,
} from "../cells/quantity";
import { vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { additiveRetention } from "../model/retention/additive";
import { loopBalance } from "../model/retention/balance";
import { componentRetention } from "../model/retention/component";
import { firstPassRetention } from "../model/retention/first-pass";
import { overallRetention } from "../model/retention/loop";
import { overallRetentionOfMixture } from "../model/retention/overall";
import { whiteWaterConcentration } from "../model/retention/white-water";

const headbox = quantity("headbox", "same unit as whiteWater", aboveZero);
const whiteWater = quantity("whiteWater", "same unit as headbox", aboveZero);
const flowRatio = optionalQuantity("flowRatio", "m³/h per m³/h", aboveZero, 1);
const firstPass = quantity("firstPass", "fraction", upToOne);
const recycled = quantity("recycled", "fraction", upToOne);
const degraded = quantity("degraded", "fraction", upToOne);

const solids = elementwise(
  "RETENTION.FIRSTPASS",
  [headbox, whiteWater, flowRatio],
  firstPassRetention,
);

/**
 * Share of the solids that stays in the sheet in one pass over the wire. First-pass, true and overall
 * retention are three things: this one compares the white water with the headbox.
 * @customfunction RETENTION.FIRSTPASS
 * @param headbox Consistency in the headbox [same unit as whiteWater]; above 0.
 * @param whiteWater Consistency of the white water from the forming section [same unit as headbox]; above 0.
 * @param [flowRatio] White-water flow over headbox flow [m³/h per m³/h]; above 0; 1 if left out.
 * @returns First-pass retention [fraction].
 * @equation R = 1 - \frac{c_\text{white water}}{c_\text{headbox}} \cdot \frac{Q_\text{white water}}{Q_\text{headbox}}
 * @range Steady running, both samples taken at one moment.
 * @source Mass balance; terms as in TAPPI TIP 0502-13.
 * @words wire retention, white water consistency, headbox consistency, total retention
 * @example =WETEND.RETENTION.FIRSTPASS(0.8%, 0.2%) → 0.75
 * @requiresAddress
 */
export function retentionFirstPass(
  headbox: any[][],
  whiteWater: any[][],
  flowRatio: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return solids(headbox, whiteWater, flowRatio, invocation);
}

const component = elementwise(
  "RETENTION.COMPONENT",
  [
    headbox,
    quantity("headboxShare", "fraction", aboveZeroUpTo(1)),
    whiteWater,
    quantity("whiteWaterShare", "fraction", upToOne),
    flowRatio,
  ],
  componentRetention,
);

/**
 * Share of one component of the solids (ash, fines) that stays in the sheet in one pass. For ash, burn at
 * 525 °C where there is carbonate: at 900 °C carbonate loses 44 % of its mass.
 * @customfunction RETENTION.COMPONENT
 * @param headbox Consistency in the headbox [same unit as whiteWater]; above 0.
 * @param headboxShare Share of the component in the headbox solids [fraction]; above 0, up to 1.
 * @param whiteWater Consistency of the white water from the forming section [same unit as headbox]; above 0.
 * @param whiteWaterShare Share of the component in the white-water solids [fraction]; 0 to 1.
 * @param [flowRatio] White-water flow over headbox flow [m³/h per m³/h]; above 0; 1 if left out.
 * @returns First-pass retention of the component [fraction].
 * @equation R = 1 - \frac{c_\text{white water} \, w_\text{white water}}{c_\text{headbox} \, w_\text{headbox}} \cdot \frac{Q_\text{white water}}{Q_\text{headbox}}
 * @range Steady running, all samples taken at one moment.
 * @source Mass balance; terms as in TAPPI TIP 0502-13; ash by ISO 1762 and ISO 2144.
 * @words ash retention, filler retention, fines retention
 * @example =WETEND.RETENTION.COMPONENT(0.8%, 0.2, 0.2%, 0.5) → 0.375
 * @requiresAddress
 */
export function retentionComponent(
  headbox: any[][],
  headboxShare: any[][],
  whiteWater: any[][],
  whiteWaterShare: any[][],
  flowRatio: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return component(headbox, headboxShare, whiteWater, whiteWaterShare, flowRatio, invocation);
}

const additive = cases(
  "RETENTION.ADDITIVE",
  [
    vector("amounts", "n", "any one unit", notNegative, { byCase: true }),
    vector("retentions", "n", "fraction", upToOne, { byCase: true }),
    optionalQuantity("dissolved", "unit of the amounts", notNegative, 0),
    optionalQuantity("carried", "fraction", upToOne, 0),
  ],
  additiveRetention,
);

/**
 * Share of an additive that stays in the first pass: what each component holds stays or goes with that
 * component, so that starch held on lost fines is lost with them.
 * @customfunction RETENTION.ADDITIVE
 * @param amounts Additive held on each component [any one unit]; 0 or more; a row or a column, or a block with one case a row.
 * @param retentions First-pass retention of each component [fraction]; 0 to 1.
 * @param [dissolved] Additive still dissolved [unit of the amounts]; 0 or more; 0 if left out.
 * @param [carried] Share of the dissolved part that stays with the water in the web [fraction]; 0 to 1; 0 if left out.
 * @returns First-pass retention of the additive [fraction].
 * @equation R = \frac{\sum_i A_i R_i + D \cdot \text{carried}}{\sum_i A_i + D}
 * @range Nothing lets go of its additive between the headbox and the press.
 * @source Mass balance.
 * @words starch retention, retained on fines, lost with the fines
 * @example =WETEND.RETENTION.ADDITIVE({1.2,5.6}, {0.95,0.6}, 0.2) → 0.642857143
 * @requiresAddress
 */
export function retentionAdditive(
  amounts: any[][],
  retentions: any[][],
  dissolved: any[][],
  carried: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return additive(amounts, retentions, dissolved, carried, invocation);
}

const loop = elementwise("RETENTION.LOOP", [firstPass, recycled, degraded], overallRetention);

/**
 * Overall retention of an additive with the white water going round: what is not retained comes back, less
 * what leaves the loop and what is destroyed on the way. Starch that was degraded is still oxygen demand.
 * @customfunction RETENTION.LOOP
 * @param firstPass First-pass retention [fraction]; 0 to 1.
 * @param recycled Share of the unretained part that returns to the headbox [fraction]; 0 to 1.
 * @param degraded Share of the returning part that is destroyed on the way [fraction]; 0 to 1. There is no default: native starch at first pass 0.15, recycled 0.95 ends at 78 % with 0 and at 25 % with 0.5.
 * @returns Overall retention [fraction].
 * @equation R = \frac{f}{1 - (1 - f)\,r\,(1 - d)}
 * @range Steady running; what returns is retained as well as what is fresh.
 * @source Geometric series over the passes.
 * @words closed loop, white water circuit, recirculation, closure
 * @example =WETEND.RETENTION.LOOP(0.15, 0.95, 0.5) → 0.251572327
 * @requiresAddress
 */
export function retentionLoop(
  firstPass: any[][],
  recycled: any[][],
  degraded: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return loop(firstPass, recycled, degraded, invocation);
}

const overall = cases(
  "RETENTION.OVERALL",
  [
    vector("amounts", "m", "any one unit", notNegative),
    vector("firstPass", "m", "fraction", upToOne),
    vector("recycled", "m", "fraction", upToOne, { oneForAll: true }),
    vector("degraded", "m", "fraction", upToOne, { oneForAll: true }),
  ],
  overallRetentionOfMixture,
);

/**
 * Overall retention of an additive that sits in several places (on fibre, on fines, dissolved): each
 * population loops at its own first-pass retention. Blending them before the loop flatters the answer.
 * @customfunction RETENTION.OVERALL
 * @param amounts Additive in each population [any one unit]; 0 or more; a row or a column.
 * @param firstPass First-pass retention of each population [fraction]; 0 to 1.
 * @param recycled Share of the unretained part that returns to the headbox [fraction]; 0 to 1; one for all, or one each.
 * @param degraded Share of the returning part that is destroyed on the way [fraction]; 0 to 1; one for all, or one each.
 * @returns Overall retention of the whole [fraction].
 * @equation R = \frac{\sum_i A_i \frac{f_i}{1 - (1 - f_i)\,r_i\,(1 - d_i)}}{\sum_i A_i}
 * @range Steady running; a population keeps its place while it goes round.
 * @source Mass balance; geometric series over the passes.
 * @words mixture, populations, fines and fibre, closed loop
 * @example =WETEND.RETENTION.OVERALL({1.2,5.6,0.2}, {0.95,0.6,0}, 0.9, 0.5) → 0.751971626
 * @requiresAddress
 */
export function retentionOverall(
  amounts: any[][],
  firstPass: any[][],
  recycled: any[][],
  degraded: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return overall(amounts, firstPass, recycled, degraded, invocation);
}

const balance = whole(
  "RETENTION.BALANCE",
  [quantity("dose", "kg/t", notNegative), firstPass, recycled, degraded],
  (...values) => {
    const { headboxLoad, retained, toSewer, degraded, overallRetention } = loopBalance(...values);
    return [
      ["headbox load [kg/t]", headboxLoad],
      ["retained [kg/t]", retained],
      ["to sewer [kg/t]", toSewer],
      ["degraded [kg/t]", degraded],
      ["overall retention [fraction]", overallRetention],
    ];
  },
);

/**
 * Where a dose goes once the loop is steady. Retained, to sewer and degraded close on the dose; what is
 * degraded leaves too, as oxygen demand.
 * @customfunction RETENTION.BALANCE
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param firstPass First-pass retention [fraction]; 0 to 1.
 * @param recycled Share of the unretained part that returns to the headbox [fraction]; 0 to 1.
 * @param degraded Share of the returning part that is destroyed on the way [fraction]; 0 to 1.
 * @returns Table: headbox load, retained, to sewer, degraded, overall retention [kg/t, the last a fraction].
 * @equation L = \frac{\text{dose}}{1 - (1 - f)\,r\,(1 - d)}, \quad \text{retained} = f L, \quad \text{to sewer} = (1 - f)(1 - r) L, \quad \text{degraded} = (1 - f)\,r\,d\,L
 * @range Steady running; what returns is retained as well as what is fresh.
 * @source Mass balance; geometric series over the passes.
 * @words where does it go, loop balance, build-up, recirculation
 * @example =WETEND.RETENTION.BALANCE(10, 0.15, 0.95, 0.5) → {"headbox load [kg/t]",16.77149;"retained [kg/t]",2.51572;"to sewer [kg/t]",0.71279;"degraded [kg/t]",6.77149;"overall retention [fraction]",0.251572}
 * @requiresAddress
 */
export function retentionBalance(
  dose: any[][],
  firstPass: any[][],
  recycled: any[][],
  degraded: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return balance(dose, firstPass, recycled, degraded, invocation);
}

const dissolved = elementwise(
  "RETENTION.WHITEWATER",
  [
    quantity("load", "kg/h", notNegative),
    quantity("purge", "m³/h", notNegative),
    quantityOrNone("volume", "m³", aboveZero),
    quantityOrNone("hours", "h", notNegative),
    optionalQuantity("decay", "1/h", notNegative, 0),
  ],
  whiteWaterConcentration,
);

/**
 * Dissolved additive in the white water. Without hours it is the steady state; with volume and hours it is
 * the approach from clean water.
 * @customfunction RETENTION.WHITEWATER
 * @param load Dissolved additive that enters the loop [kg/h]; 0 or more.
 * @param purge Water that leaves the loop, not the flow around it [m³/h]; 0 or more.
 * @param [volume] Volume of the loop [m³]; above 0; needed with hours or decay.
 * @param [hours] Time since clean water [h]; 0 or more; the steady state if left out.
 * @param [decay] Decay of first order in the loop [1/h]; 0 or more; 0 if left out.
 * @returns Dissolved additive in the white water [mg/L].
 * @equation C_\infty = \frac{1000 \cdot \text{load}}{Q + k V}, \quad C(t) = C_\infty \left(1 - e^{-(Q/V + k)\,t}\right)
 * @range One well-mixed volume; load and purge constant.
 * @source Balance of a stirred tank.
 * @words build-up, white water starch, purge, fresh water, steady state
 * @example =WETEND.RETENTION.WHITEWATER(20, 100) → 200
 * @example =WETEND.RETENTION.WHITEWATER(20, 100, 800, 8) → 126.4241118
 * @requiresAddress
 */
export function retentionWhiteWater(
  load: any[][],
  purge: any[][],
  volume: any[][],
  hours: any[][],
  decay: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return dissolved(load, purge, volume, hours, decay, invocation);
}
