import type { TableColumnPlan, TablePart } from "../../../src/workbook/plan";

/** Capacity and half load for the cationic starch, from a separated beaker test. */
export const furnish = [
  { component: "fibre", share: 0.6, surface: 1.5, capacity: 8, halfLoad: 20, firstPass: 0.97 },
  { component: "fines", share: 0.28, surface: 8, capacity: 10, halfLoad: 11, firstPass: 0.65 },
  { component: "filler", share: 0.12, surface: 10, capacity: 1.7, halfLoad: 1, firstPass: 0.55 },
] as const;

/** What little dissolved starch the water in the web carries along. */
export const dissolvedFirstPass = 0.05;

type Property = keyof (typeof furnish)[number];
export const ofFurnish = <K extends Property>(key: K) => furnish.map((its) => its[key]);

const share = { number: { from: 0, to: 1 } };

export const furnishColumns: Readonly<Record<Property, TableColumnPlan>> = {
  component: { key: "component", header: "Component", values: ofFurnish("component") },
  share: {
    key: "share",
    header: "Share",
    unit: "fraction",
    values: ofFurnish("share"),
    format: "0.00",
    allow: share,
    help: "Share of the oven-dry furnish; the column sums to 1.",
  },
  surface: {
    key: "surface",
    header: "Surface",
    unit: "m²/g",
    values: ofFurnish("surface"),
    format: "0.0",
    allow: { number: { from: 0.1, to: 100 } },
    help: "Specific surface of the wet component.",
  },
  capacity: {
    key: "capacity",
    header: "Capacity",
    unit: "mg/m²",
    values: ofFurnish("capacity"),
    format: "0.0",
    allow: { number: { from: 0.01, to: 100 } },
    help: "Starch that fills a square metre: from a beaker test.",
  },
  halfLoad: {
    key: "halfLoad",
    header: "Half load",
    unit: "mg/L",
    values: ofFurnish("halfLoad"),
    format: "0.0",
    allow: { number: { from: 0.001, to: 10000 } },
    help: "Dissolved starch at which half of the sites are filled: from a beaker test.",
  },
  firstPass: {
    key: "firstPass",
    header: "First pass",
    unit: "fraction",
    values: ofFurnish("firstPass"),
    format: "0 %",
    allow: share,
    help: "First-pass retention: share that stays in the sheet in one pass over the wire.",
  },
};

/** The furnish as a table of inputs, its rows in the order of `furnish`. */
export function furnishTable(at: string, properties: readonly Property[]): TablePart {
  return {
    kind: "table",
    at,
    name: "furnish",
    columns: properties.map((property) => furnishColumns[property]),
  };
}

/** What the partition functions ask of the furnish. */
export const PARTITIONED = ["component", "share", "surface", "capacity", "halfLoad"] as const;

/** The four arguments of the partition functions that the table holds. */
export const furnishArguments =
  "{furnish.share},{furnish.surface},{furnish.capacity},{furnish.halfLoad}";

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
        values: [...ofFurnish("component").map((component) => `on ${component}`), "dissolved"],
      },
      { ...furnishColumns.firstPass, values: [...ofFurnish("firstPass"), dissolvedFirstPass] },
    ],
  };
}
