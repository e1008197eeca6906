/** What one batch of laboratory sheets takes. */
export interface Handsheet {
  readonly fibreGrams: number;
  readonly stockMillilitres: number;
  readonly additiveMilligrams: number;
  readonly solutionMillilitres: number;
}

const GRAMS_PER_MILLILITRE = 1;

/**
 * Fibre, stock and additive solution for a batch of sheets. Thin stock and weak solutions are taken to
 * weigh 1 g/mL; a dose of 1 kg/t is 1 mg of dry active additive per gram of oven-dry fibre.
 *
 * Source: TAPPI T 205 and ISO 5269-1 (60 g/m² oven-dry); the sheet of 0.02 m² and the stock of 0.3 % for it
 * are from memory.
 */
export function handsheet(
  dose: number,
  stockConsistency: number,
  solution: number,
  grammage: number,
  area: number,
  sheets: number,
): Handsheet {
  const fibreGrams = grammage * area * sheets;
  const additiveMilligrams = dose * fibreGrams;
  return {
    fibreGrams,
    stockMillilitres: fibreGrams / stockConsistency / GRAMS_PER_MILLILITRE,
    additiveMilligrams,
    solutionMillilitres: additiveMilligrams / 1000 / solution / GRAMS_PER_MILLILITRE,
  };
}
