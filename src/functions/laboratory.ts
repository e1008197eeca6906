import { cases } from "../cells/cases";
import {
  aboveZero,
  aboveZeroUpTo,
  notNegative,
  optionalQuantity,
  quantity,
  wholeNumber,
} from "../cells/quantity";
import { whole } from "../cells/whole";
import { handsheet } from "../model/trial/handsheet";
import { makeDown } from "../model/trial/make-down";

const MOST_SHEETS = 1000;
/** Thicker than this no laboratory stock is: a larger number is a percentage typed for a fraction. */
const THICKEST_LABORATORY_STOCK = 0.15;

const batchOfSheets = cases(
  "TRIAL.HANDSHEET",
  [
    quantity("dose", "kg/t", notNegative),
    quantity("stockConsistency", "fraction", aboveZeroUpTo(THICKEST_LABORATORY_STOCK)),
    quantity("solution", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("grammage", "g/m²", aboveZero, 60),
    optionalQuantity("area", "m²", aboveZero, 0.02),
    wholeNumber("sheets", 1, MOST_SHEETS, 1),
  ],
  (...values) => {
    const { fibreGrams, stockMillilitres, additiveMilligrams, solutionMillilitres } = handsheet(
      ...values,
    );
    return [fibreGrams, stockMillilitres, additiveMilligrams, solutionMillilitres];
  },
  ["fibre [g]", "stock [mL]", "additive [mg]", "solution [mL]"],
);

/**
 * What one batch of laboratory sheets takes. Treat the stock of a whole batch at once and form its sheets from
 * it. Stock and solution are taken to weigh 1 g/mL. Hot starch scalds and its dust can explode: the supplier's
 * safety data sheet, the site's rules and local law come first.
 * @customfunction TRIAL.HANDSHEET
 * @param dose Dose of dry active additive [kg/t]; 0 or more.
 * @param stockConsistency Consistency of the stock [fraction]; above 0, up to 0.15.
 * @param solution Strength of the additive solution, dry active by mass [fraction]; above 0, up to 1.
 * @param [grammage] Oven-dry grammage of the sheet [g/m²]; above 0; 60 if left out.
 * @param [area] Area of the sheet [m²]; above 0; 0.02 if left out.
 * @param [sheets] Sheets of one batch [count]; 1 to 1000; 1 if left out.
 * @returns Table: fibre [g], stock [mL], additive [mg], solution [mL] of one batch; with columns of arguments a row a case, in this order.
 * @equation m = \text{grammage}\cdot\text{area}\cdot\text{sheets}, \quad V_{\text{stock}} = \frac{m}{c}, \quad a = \text{dose}\cdot m, \quad V_{\text{solution}} = \frac{a}{1000\,w}
 * @range Thin stock and weak solutions.
 * @source TAPPI T 205 and ISO 5269-1: 60 g/m² oven-dry, on 0.02 m² 1.20 g (the area from memory).
 * @words hand sheet, sheet former, laboratory sheet, beaker, bench trial
 * @example =WETEND.TRIAL.HANDSHEET(10, 0.003, 0.01) → {"fibre [g]",1.2;"stock [mL]",400;"additive [mg]",12;"solution [mL]",1.2}
 * @requiresAddress
 */
export function trialHandsheet(
  dose: any[][],
  stockConsistency: any[][],
  solution: any[][],
  grammage: any[][],
  area: any[][],
  sheets: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return batchOfSheets(dose, stockConsistency, solution, grammage, area, sheets, invocation);
}

const mixture = whole(
  "TRIAL.MAKEDOWN",
  [
    quantity("volume", "L", aboveZero),
    quantity("strength", "fraction", aboveZeroUpTo(1)),
    quantity("solids", "fraction", aboveZeroUpTo(1)),
    optionalQuantity("active", "fraction", aboveZeroUpTo(1), 1),
    optionalQuantity("density", "kg/L", aboveZero, 1),
  ],
  (...values) => {
    const { productGrams, waterGrams } = makeDown(...values);
    return [
      ["product [g]", productGrams],
      ["water [g]", waterGrams],
    ];
  },
);

/**
 * Product as received and water for a volume of additive solution. Add powder slowly to stirred water: its
 * dust can explode and a spill is slippery, hot starch scalds. The supplier's safety data sheet, the site's
 * rules and local law come first.
 * @customfunction TRIAL.MAKEDOWN
 * @param volume Volume of the solution [L]; above 0.
 * @param strength Strength of the solution, dry active by mass [fraction]; above 0, up to what the product holds.
 * @param solids Dry solids of the product as received [fraction]; above 0, up to 1.
 * @param [active] Active part of the dry solids [fraction]; above 0, up to 1; 1 if left out.
 * @param [density] Density of the solution [kg/L]; above 0; 1 if left out.
 * @returns Table: product and water [g].
 * @equation m_{\text{product}} = \frac{1000\,V \rho\,w}{\text{solids}\cdot\text{active}}, \quad m_{\text{water}} = 1000\,V\rho - m_{\text{product}}
 * @range Any product; water that steam brings into a cooker counts as water.
 * @source Mass balance.
 * @words make-up, dilution, cook, prepare solution, stock solution
 * @example =WETEND.TRIAL.MAKEDOWN(2, 0.01, 0.88) → {"product [g]",22.7273;"water [g]",1977.2727}
 * @requiresAddress
 */
export function trialMakeDown(
  volume: any[][],
  strength: any[][],
  solids: any[][],
  active: any[][],
  density: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return mixture(volume, strength, solids, active, density, invocation);
}
