/** g/m² per (kN/m over N·m/g): grammage = 1000·strength/index, as tensile index is defined (ISO 1924-2). */
const GRAMMAGE_PER_STRENGTH = 1000;
const KILOGRAMS_PER_TONNE = 1000;

/** What often forbids a lighter sheet and is not looked at here. */
export const NOT_CHECKED = "stiffness, opacity, bulk, formation and runnability";

/** Grammages in g/m²; fibre in kg and money per 1,000 m² of paper. */
export interface GrammageSaving {
  readonly before: number;
  readonly after: number;
  readonly fibreSaved: number;
  readonly netSaving: number;
}

/**
 * Strength gained turned into less fibre at equal strength of the sheet: grammage = 1000·strength/index
 * before and after, the difference at the price of fibre, less what the treatment adds per tonne of
 * the paper made. One g/m² is one kg per 1,000 m².
 *
 * Limits: fibre and paper oven-dry; the index does not change with grammage; what is `NOT_CHECKED`
 * often decides. A lower new index gives a negative saving.
 * Source: definition of the tensile index, ISO 1924-2.
 */
export function grammageSaving(
  requiredStrength: number,
  index: number,
  newIndex: number,
  fibrePrice: number,
  addedCost: number,
): GrammageSaving {
  const before = grammageFor(requiredStrength, index);
  const after = grammageFor(requiredStrength, newIndex);
  const fibreSaved = before - after;
  return {
    before,
    after,
    fibreSaved,
    netSaving: (fibreSaved * fibrePrice - after * addedCost) / KILOGRAMS_PER_TONNE,
  };
}

function grammageFor(strength: number, index: number): number {
  return (GRAMMAGE_PER_STRENGTH * strength) / index;
}
