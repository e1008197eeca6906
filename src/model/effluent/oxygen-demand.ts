import { noAnswer } from "../refusal";
import { molarMass, readFormula } from "./chemical-formula";
import { ELEMENTS } from "./elements";

/** Twice the oxygen atom, g/mol. */
const OXYGEN_MOLECULE = 31.998;
/** Electrons that one O2 takes up. */
const ELECTRONS_PER_OXYGEN = 4;
/** Electrons from NH3 to HNO3. */
const ELECTRONS_OF_NITRIFICATION = 8;
/** g O₂/g below which a sum of decimal counts is nothing but rounding. */
const ROUNDING = 1e-12;

/**
 * Theoretical oxygen demand of a substance, g O₂/g, from its formula.
 *
 * Each atom goes to the state named in `elements.ts`; the charge numbers of these states, less the
 * oxygen already there, are the electrons given up, and four of them take one O₂:
 * for CₐH_bO_cN_d, O₂ = a + (b − 3d)/4 − c/2. With `nitrify` NH3 goes on to HNO3, 2 O₂ for each N.
 * Limits: theoretical. A dichromate test finds less where oxidation is incomplete, and does not take
 * up ammonia; a five-day biochemical test finds much less.
 * Source: stoichiometry; atomic masses of IUPAC/CIAAW as in `elements.ts`.
 */
export function theoreticalOxygenDemand(formula: string, nitrify: boolean): number {
  const composition = readFormula(formula);
  let electrons = 0;
  for (const [symbol, count] of composition)
    electrons += (ELEMENTS.get(symbol)?.oxidised ?? NaN) * count;
  if (nitrify) electrons += ELECTRONS_OF_NITRIFICATION * (composition.get("N") ?? 0);

  const oxygen = ((electrons / ELECTRONS_PER_OXYGEN) * OXYGEN_MOLECULE) / molarMass(composition);
  if (oxygen < -ROUNDING) {
    noAnswer(
      `The formula "${formula}" brings more oxygen than it can take up. It is an oxidiser: it has no oxygen demand.`,
    );
  }
  return oxygen < ROUNDING ? 0 : oxygen;
}
