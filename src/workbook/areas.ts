import type { Area } from "./book";

/** Whether an area holds a cell. */
export const holdsCell = (
  { row: first, column: left, rows, columns }: Area,
  row: number,
  column: number,
): boolean => row >= first && row < first + rows && column >= left && column < left + columns;

/** Whether two areas have a cell in common. */
export const overlap = (one: Area, other: Area): boolean =>
  one.row < other.row + other.rows &&
  other.row < one.row + one.rows &&
  one.column < other.column + other.columns &&
  other.column < one.column + one.columns;

/** The cells that both areas have. */
export function common(one: Area, other: Area): Area | undefined {
  if (!overlap(one, other)) return undefined;
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
  return { row, column, rows, columns };
}

/** The cells of the first area that the other does not have, in up to four areas. */
export function without(area: Area, other: Area): Area[] {
  const cut = common(area, other);
  if (!cut) return [area];
  const [below, right] = [cut.row + cut.rows, cut.column + cut.columns];
  const beside = { ...area, row: cut.row, rows: cut.rows };
  return [
    { ...area, rows: cut.row - area.row },
    { ...beside, columns: cut.column - area.column },
    { ...beside, column: right, columns: area.column + area.columns - right },
    { ...area, row: below, rows: area.row + area.rows - below },
  ].filter(({ rows, columns }) => rows > 0 && columns > 0);
}

/** The smallest area that holds all of them, however many they are. */
export const hull = (areas: readonly [Area, ...Area[]]): Area => areas.reduce(around);

function around(one: Area, other: Area): Area {
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  const rows = Math.max(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.max(one.column + one.columns, other.column + other.columns) - column;
  return { row, column, rows, columns };
}
