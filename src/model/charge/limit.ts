import { figureBeside } from "../figure";
import { noAnswer } from "../refusal";

/**
 * Dose of a cationic additive, kg/t, whose charge equals the anionic demand of the stock.
 *
 * Surface demand µeq/g of solids, water demand µeq/L in the (1−c)/c litres that go with each kg of
 * solids (water at 1 kg/L), less what another cationic additive already brings, divided by the
 * charge density meq/g (µeq/g over meq/g is mg/g, which is kg/t).
 * Limits: a ceiling to confirm by titration. The demand of recirculating water is an inventory, not
 * fresh with every tonne, and not every charge is within reach of a large molecule.
 * Source: charge balance.
 */
export function chargeLimit(
  surfaceDemand: number,
  waterDemand: number,
  consistency: number,
  density: number,
  otherCationic: number,
): number {
  const litresPerGram = (1 - consistency) / consistency / 1000;
  const demand = surfaceDemand + waterDemand * litresPerGram;
  if (otherCationic > demand) {
    noAnswer(
      `The other cationic charge is ${figureBeside(otherCationic, demand)} µeq/g, above the demand of ${figureBeside(demand, otherCationic)} µeq/g. ` +
        "No charge is left to neutralise: the stock is already cationic.",
    );
  }
  return (demand - otherCationic) / density;
}
