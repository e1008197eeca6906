/**
 * Page's equation for the tensile strength of a sheet,
 *
 *   1/T = 9/(8·Z) + 12·C/(b·P·L·RBA)
 *
 * with T tensile index and Z zero-span tensile index (N·m/g), C coarseness (mg/m), b shear strength of
 * the bond (MPa), P fibre perimeter (µm), L fibre length (mm), RBA relative bonded area (fraction). The
 * first term is the strength of the fibres, the second that of the bonds. In these units the factors of
 * ten cancel: (mg/m)/(MPa·µm·mm) = g/(N·m).
 *
 * Source: Page, A theory for the tensile strength of paper, Tappi 52(4) 1969, 674–681; written there for
 * breaking length with fibre section times density, which is coarseness.
 */
export function pageTensileIndex(
  zeroSpan: number,
  coarseness: number,
  bond: number,
  perimeter: number,
  length: number,
  bonded: number,
): number {
  const perFibreStrength = 9 / (8 * zeroSpan);
  const perBondStrength = (12 * coarseness) / (bond * perimeter * length * bonded);
  return 1 / (perFibreStrength + perBondStrength);
}
