const made = (column: string) => `FILTER({results.${column}},ISNUMBER({results.index}))`;

/** What was measured of the sheets that were made: a sheet that is lost or torn leaves its tensile without a number. */
export const sheetsMade = {
  dose: made("dose"),
  index: made("index"),
  run: made("run"),
  block: made("block"),
} as const;
