import type { InputPart, TablePart, TextPart } from "../../src/workbook/plan";

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
} as const;

export const effluent = {
  /** m³/d */
  flow: 2900,
  /** kg/d COD of everything else, raw. */
  background: 2620,
  /** kg/d COD to the town's works, as the consent has it. */
  limit: 3400,
  margin: 0.05,
} as const;

/** Native maize starch and refining, the other two ways to the same strength. */
export const alternatives = {
  nativePrice: 0.45,
  nativeRetention: 0.2,
  /** N·m/g that each way gains. */
  increase: 4.2,
  /** kWh/t net for that gain by refining. */
  refiningEnergy: 38,
  powerPrice: 0.11,
  lossPrice: 0.24,
} as const;

export const furnish = [
  { component: "fibre", share: 0.6, surface: 1.5, capacity: 8, halfLoad: 20, firstPass: 0.97 },
  { component: "fines", share: 0.28, surface: 8, capacity: 10, halfLoad: 11, firstPass: 0.65 },
  { component: "filler", share: 0.12, surface: 10, capacity: 1.7, halfLoad: 1, firstPass: 0.55 },
] as const;

/** What little dissolved starch the water in the web carries along. */
export const dissolvedFirstPass = 0.05;

const fraction = { number: { from: 0, to: 1 } };

/** The furnish as a table of inputs, its rows in the order of `furnish`. */
export function furnishTable(at: string): TablePart {
  const values = <K extends keyof (typeof furnish)[number]>(key: K) =>
    furnish.map((component) => component[key]);
  return {
    kind: "table",
    at,
    name: "furnish",
    columns: [
      { key: "component", header: "Component", values: values("component") },
      {
        key: "share",
        header: "Share",
        unit: "fraction",
        values: values("share"),
        format: "0.00",
        allow: fraction,
        help: "Share of the oven-dry furnish; the column sums to 1.",
      },
      {
        key: "surface",
        header: "Surface",
        unit: "m²/g",
        values: values("surface"),
        format: "0.0",
        allow: { number: { from: 0.1, to: 100 } },
        help: "Specific surface of the wet component.",
      },
      {
        key: "capacity",
        header: "Capacity",
        unit: "mg/m²",
        values: values("capacity"),
        format: "0.0",
        allow: { number: { from: 0.01, to: 100 } },
        help: "Starch that fills a square metre: from a beaker test.",
      },
      {
        key: "halfLoad",
        header: "Half load",
        unit: "mg/L",
        values: values("halfLoad"),
        format: "0.0",
        allow: { number: { from: 0.001, to: 10000 } },
        help: "Dissolved starch at which half of the sites are filled: from a beaker test.",
      },
    ],
  };
}

/** The first-pass retention of each population, the dissolved part last. */
export function populationsTable(at: string): TablePart {
  return {
    kind: "table",
    at,
    name: "populations",
    columns: [
      {
        key: "place",
        header: "Where it is",
        values: [...furnish.map(({ component }) => `on ${component}`), "dissolved"],
      },
      {
        key: "firstPass",
        header: "First-pass retention",
        unit: "fraction",
        values: [...furnish.map(({ firstPass }) => firstPass), dissolvedFirstPass],
        format: "0 %",
        allow: fraction,
        help: "Share that stays in the sheet in one pass over the wire.",
      },
    ],
  };
}

/** The paragraph on the first sheet that says whose numbers these are. */
export function inventedNote(at: string, span: number): TextPart {
  return {
    kind: "text",
    at,
    look: "note",
    span,
    text: `${mill.name} is an invented mill (${mill.paper} t/d of testliner). Every number in this workbook is invented and plausible: put your own in their place.`,
  };
}

/** A fraction shown as a percentage. */
export function fractionInput(
  part: Omit<InputPart, "kind" | "unit" | "allow"> & { readonly to?: number },
): InputPart {
  const { to = 1, ...rest } = part;
  return {
    kind: "input",
    unit: "fraction",
    format: "0.0 %",
    allow: { number: { from: 0, to } },
    ...rest,
  };
}
