/** Ranges as a host hands them over: row by row, each with its cells. */
export type Range = readonly (readonly unknown[])[];

/** How many rows a sheet has. */
export const SHEET_ROWS = 1_048_576;

export const isRange = (value: unknown): value is Range => Array.isArray(value);
export const isRow = (value: unknown): value is Range => isRange(value) && value.length === 1;
export const isColumn = (value: unknown): value is Range =>
  isRange(value) && value.every((line) => line.length === 1);

/** A row as a column and a column as a row; anything else as it is. */
export const turned = (value: unknown): unknown => {
  if (isColumn(value)) return [value.map(([cell]) => cell)];
  return isRow(value) ? (value[0] as unknown[]).map((cell) => [cell]) : value;
};
export const upright = (value: unknown) => (isRow(value) ? turned(value) : value);

/** The same values with blank rows down to the end of the sheet. */
export function toTheEnd(value: Range, blank: unknown): unknown[][] {
  const blanks = new Array(value[0]?.length ?? 1).fill(blank);
  const rows = new Array<unknown[]>(SHEET_ROWS).fill(blanks);
  value.forEach((line, row) => {
    rows[row] = [...line];
  });
  return rows;
}
