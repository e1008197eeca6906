/** What the oxygen demand needs to know of an element. */
export interface Element {
  /** g/mol. */
  readonly mass: number;
  /**
   * Charge number of the element once the water has oxidised everything: carbon as CO2, hydrogen as
   * H2O, nitrogen as NH3, sulphur as H2SO4, phosphorus as H3PO4, a halogen as HX, a metal as its
   * hydroxide or oxide.
   */
  readonly oxidised: number;
}

/**
 * Atomic masses: abridged standard values of IUPAC/CIAAW, 2021 (Prohaska et al., Pure and Applied
 * Chemistry 94 (2022) 573). The oxidised states are those that `Element` names; iron counts as
 * Fe(OH)3, copper as Cu(OH)2, manganese as MnO2.
 */
export const ELEMENTS: ReadonlyMap<string, Element> = new Map(
  (
    [
      ["H", 1.008, 1],
      ["Li", 6.94, 1],
      ["B", 10.81, 3],
      ["C", 12.011, 4],
      ["N", 14.007, -3],
      ["O", 15.999, -2],
      ["F", 18.998, -1],
      ["Na", 22.99, 1],
      ["Mg", 24.305, 2],
      ["Al", 26.982, 3],
      ["Si", 28.085, 4],
      ["P", 30.974, 5],
      ["S", 32.06, 6],
      ["Cl", 35.45, -1],
      ["K", 39.098, 1],
      ["Ca", 40.078, 2],
      ["Ti", 47.867, 4],
      ["Mn", 54.938, 4],
      ["Fe", 55.845, 3],
      ["Cu", 63.546, 2],
      ["Zn", 65.38, 2],
      ["Br", 79.904, -1],
      ["Sr", 87.62, 2],
      ["Zr", 91.224, 4],
      ["I", 126.9, -1],
      ["Ba", 137.33, 2],
    ] as const
  ).map(([symbol, mass, oxidised]) => [symbol, { mass, oxidised }]),
);
