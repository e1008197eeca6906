import { isErrorText } from "../arguments";
import type { EngineFormula } from "../executor";

/** A text is no number, "7" is not 7: as a look-up takes them. */
type IndexKey = string | number | boolean | typeof blank;
const blank = Symbol("blank cell");

/** The rows of one column by what stands in them, and back. */
class ColumnIndex {
  readonly rows = new Map<IndexKey, Set<number>>();
  readonly #keys = new Map<number, IndexKey>();

  put(row: number, key: IndexKey): void {
    const before = this.#keys.get(row);
    if (before !== undefined) this.rows.get(before)?.delete(row);
    this.#keys.set(row, key);
    const rows = this.rows.get(key);
    if (rows) rows.add(row);
    else this.rows.set(key, new Set([row]));
  }
}

function keyOf(value: unknown): IndexKey {
  if (value === null || value === undefined) return blank;
  if (typeof value === "string") return value.toLowerCase();
  // Minus zero is zero.
  return value === 0 ? 0 : (value as number | boolean);
}

/**
 * The engine keeps an index of the values of each column, by which COUNTIF or VLOOKUP find their rows.
 * To put a computed value into it, it looks through all values of the column for the one that stood there
 * before: time grows with the square of the rows. This index knows each row's own value.
 */
export function mendIndex({ CELL_INVERTED_INDEX_CACHE: index }: EngineFormula): void {
  const columns = new Map<string, ColumnIndex>();
  const columnKey = (...place: [unitId: string, sheetId: string, column: number]) =>
    place.join("\n");
  const clear = index.clear.bind(index);

  index.set = (unitId, sheetId, column, value, row, isForceUpdate = false) => {
    if (!isForceUpdate && !index.shouldContinueBuildingCache(unitId, sheetId, column, row)) return;
    const key = columnKey(unitId, sheetId, column);
    const known = columns.get(key);
    const rows = known ?? new ColumnIndex();
    if (!known) columns.set(key, rows);
    rows.put(row, keyOf(value));
  };
  index.getCellValuePositions = (unitId, sheetId, column) =>
    columns.get(columnKey(unitId, sheetId, column))?.rows as never;
  index.getCellPositions = (unitId, sheetId, column, value, rowsInCache) => {
    const rows = columns.get(columnKey(unitId, sheetId, column))?.rows;
    if (!rows) return undefined;
    const key: IndexKey = keyOf(value);
    if (isErrorText(value)) return { errorType: value, matchingRows: [] } as never;
    // Who looks for what a blank cell holds looks for 0.
    const found = [...(rows.get(key === blank ? 0 : key) ?? [])];
    const matchingRows = found.filter((row) =>
      rowsInCache.some(([start = 0, end = 0]) => row >= start && row <= end),
    );
    return { errorType: null, matchingRows };
  };
  index.clear = () => {
    columns.clear();
    clear();
  };
}
