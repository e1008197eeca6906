import { impossible } from "../model/refusal";
import { type Cells, usedRows } from "./cell";

/** A range that was given for an argument. */
export interface NamedRange {
  readonly name: string;
  readonly cells: Cells;
}

export function columnsOf(cells: Cells): number {
  return cells[0]?.length ?? 0;
}

/**
 * The rows that several ranges have together: as many as the longest has in use, since blank rows at the
 * end are cut. Ranges of unequal length are refused, naming both.
 */
export function commonRows(ranges: readonly NamedRange[]): number {
  const [first] = ranges;
  if (first === undefined) return 1;
  const used = ranges.map(({ cells }) => usedRows(cells));
  const longest = Math.max(...used);
  if (longest === 0) impossible(`${first.name} is blank. Give at least one row.`);
  if (ranges.some(({ cells }) => cells.length !== first.cells.length)) {
    compare("rows", ranges, used);
  }
  return longest;
}

export function commonColumns(ranges: readonly NamedRange[]): number {
  const widths = ranges.map(({ cells }) => columnsOf(cells));
  compare("columns", ranges, widths);
  return widths[0] ?? 1;
}

function compare(what: string, ranges: readonly NamedRange[], lengths: readonly number[]): void {
  const other = lengths.findIndex((length) => length !== lengths[0]);
  if (other < 0) return;
  impossible(
    `${ranges[0]?.name} has ${lengths[0]} ${what} and ${ranges[other]?.name} has ${lengths[other]}. Give ranges of one length.`,
  );
}
