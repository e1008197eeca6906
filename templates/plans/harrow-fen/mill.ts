/**
 * The one scenario of all templates. Harrow Fen is an invented mill; every number here is invented and
 * plausible, and none is taken from a real one.
 */
export const mill = {
  name: "Harrow Fen",
  /** t/d of testliner as made. */
  paper: 340,
  paperMoisture: 0.075,
  /** Thin stock where the starch is added. */
  consistency: 0.01,
  /** Share of what passes the wire that comes back to the headbox, and share of that destroyed on the way. */
  recycled: 0.92,
  degraded: 0.25,
  /** kg/t of cationic starch wanted in the sheet. */
  wanted: 6.5,
} as const;

/** Cationic starch of substitution 0.035, cooked to 3 %; prices in the mill's own currency. */
export const starch = {
  name: "cationic starch, substitution 0.035",
  solids: 0.88,
  solutionStrength: 0.03,
  solutionDensity: 1.01,
  codFactor: 1.1,
  bodFactor: 0.65,
  nitrogen: 0.0029,
  activePrice: 0.78,
  /** kg/t that leaves `mill.wanted` behind: what dose-and-effluent computes, as the mill sets it. */
  dose: 7.8,
} as const;

export const effluent = {
  /** m³/d */
  flow: 2900,
  /** kg/d of everything else, raw. */
  background: { cod: 2620, bod: 1290, nitrogen: 36 },
  /** kg/d to the town's works, as the consent has it. */
  limit: { cod: 3400, bod: 1700, nitrogen: 45 },
  /** Part of the limits that the mill keeps free. */
  margin: 0.05,
  /** The works' charge for each kilogram of COD. */
  treatmentPrice: 0.22,
} as const;

/** What else gives strength: refining, and native maize starch. */
export const alternatives = {
  /** N·m/g that the starch gains at its dose, and refining at its energy. */
  increase: 4.2,
  /** kWh/t net. */
  refiningEnergy: 38,
  powerPrice: 0.11,
  /** °SR that each kWh/t brings, and what each costs a tonne: slower running, more steam. */
  drainageRise: 0.109,
  drainageCost: 0.35,
  nativePrice: 0.45,
  nativeRetention: 0.2,
  nativeCodFactor: 1.1,
} as const;
