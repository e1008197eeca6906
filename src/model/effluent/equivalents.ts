/**
 * People who would send the same BOD, for a load kg/d and a person's share kg/d. Directive
 * 91/271/EEC, article 2, defines one population equivalent as a five-day biochemical oxygen demand
 * of 60 g of oxygen per day.
 */
export function populationEquivalents(bod: number, perPerson: number): number {
  return bod / perPerson;
}
