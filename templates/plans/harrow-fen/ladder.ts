/** How the trial was planned: in random order, five batches a dose, two sheets a batch. */
export const ladderPlan = {
  lowest: 1.5,
  highest: 12,
  steps: 4,
  spacing: "ratio",
  batches: 5,
  sheets: 2,
  seed: 2025,
  /** From batch to batch at one dose. */
  variation: 0.02,
  /** Of the mean: the difference that must not be missed. */
  difference: 0.05,
} as const;

/**
 * The invented results, with a spread as laboratories have it, in run order: block, run, dose in kg/t, then
 * for each of the two sheets tensile strength in kN/m and grammage in g/m².
 */
const runs = [
  [1, 1, 1.5, 1.951, 60.7, 1.898, 60.8],
  [1, 2, 6, 2.177, 60.8, 2.135, 60.9],
  [1, 3, 3, 2.018, 60.0, 2.026, 60.8],
  [1, 4, 12, 2.279, 60.7, 2.198, 59.8],
  [1, 5, 0, 1.92, 60.4, 1.954, 60.8],
  [2, 6, 6, 2.105, 60.6, 2.066, 59.8],
  [2, 7, 12, 2.224, 60.2, 2.253, 60.5],
  [2, 8, 1.5, 1.921, 60.0, 1.941, 60.5],
  [2, 9, 3, 1.99, 60.6, 1.975, 60.9],
  [2, 10, 0, 1.854, 60.3, 1.873, 60.1],
  [3, 11, 6, 2.035, 60.2, 2.035, 59.7],
  [3, 12, 3, 2.001, 60.4, 2.031, 60.6],
  [3, 13, 0, 1.847, 60.6, 1.868, 61.2],
  [3, 14, 12, 2.152, 59.8, 2.161, 60.7],
  [3, 15, 1.5, 1.975, 60.1, 1.968, 60.2],
  [4, 16, 3, 2.124, 60.5, 2.108, 59.6],
  [4, 17, 12, 2.227, 60.8, 2.24, 60.1],
  [4, 18, 0, 1.991, 59.8, 2.002, 60.8],
  [4, 19, 6, 2.154, 60.9, 2.159, 60.2],
  [4, 20, 1.5, 2.054, 60.3, 2.008, 59.8],
  [5, 21, 1.5, 1.988, 60.1, 1.988, 60.0],
  [5, 22, 0, 1.949, 59.9, 1.932, 60.1],
  [5, 23, 12, 2.275, 61.0, 2.3, 60.7],
  [5, 24, 3, 2.076, 60.7, 2.101, 60.8],
  [5, 25, 6, 2.204, 61.2, 2.129, 60.0],
] as const;

export interface SheetOfTrial {
  readonly block: number;
  readonly run: number;
  readonly dose: number;
  readonly sheet: number;
  readonly tensile: number;
  readonly grammage: number;
}

export const ladderSheets: readonly SheetOfTrial[] = runs.flatMap(
  ([block, run, dose, ...measured]) =>
    [0, 1].map((sheet) => ({
      block,
      run,
      dose,
      sheet: sheet + 1,
      tensile: measured[2 * sheet] as number,
      grammage: measured[2 * sheet + 1] as number,
    })),
);

/** The mean tensile index of each batch, in N·m/g to two digits, as another workbook takes it over. */
export const ladderBatches = runs.map(
  ([block, , dose, first, firstGrams, second, secondGrams]) => ({
    block,
    dose,
    index: Math.round(50_000 * (first / firstGrams + second / secondGrams)) / 100,
  }),
);

/** Refining in the laboratory: net energy in kWh/t, tensile index in N·m/g, drainage in °SR; a batch a row. */
export const refiningBatches = [
  [0, 31.4, 32],
  [0, 32.3, 33],
  [0, 31.5, 31],
  [20, 34.4, 34],
  [20, 34.1, 34],
  [20, 34.6, 34],
  [40, 35.8, 36],
  [40, 35.6, 35],
  [40, 35.7, 37],
  [60, 37.2, 39],
  [60, 37.9, 38],
  [60, 38.3, 39],
  [90, 39.0, 42],
  [90, 38.8, 41],
  [90, 37.8, 42],
].map(([energy = 0, index = 0, drainage = 0]) => ({ energy, index, drainage }));
