/** Where the keys lead that go farther than to the next cell. */
export type FarMove = "pageUp" | "pageDown" | "rowStart" | "rowEnd" | "start" | "end";

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** The lines of a sheet as they are seen. */
export interface SeenLines {
  /** Where each of them ends; one that is hidden where the one before it does. */
  readonly rowEnds: readonly number[];
  readonly columnEnds: readonly number[];
  /** The height of a page, beside what is frozen. */
  readonly seen: number;
  readonly frozen: Place;
  /** By row, the last column that is filled. Every cell is looked at for it. */
  lastFilled(): ReadonlyMap<number, number>;
}

export function farFrom({ row, column }: Place, move: FarMove, lines: SeenLines): Place {
  const { rowEnds, columnEnds, seen, frozen } = lines;
  const start = rowEnds[row - 1] ?? 0;
  switch (move) {
    case "pageDown":
      return { row: Math.max(lineAt(rowEnds, start + seen), row), column };
    case "pageUp":
      return { row: Math.min(lineFrom(rowEnds, start - seen), row), column };
    case "rowStart":
      return { row, column: firstOf(columnEnds, column > frozen.column ? frozen.column : 0) };
    case "rowEnd":
      return { row, column: lines.lastFilled().get(row) ?? column };
    case "start":
      return { row: firstOf(rowEnds, frozen.row), column: firstOf(columnEnds, frozen.column) };
    case "end":
      return [...lines.lastFilled()].reduce(
        (last, [row, column]) => ({
          row: Math.max(last.row, row),
          column: Math.max(last.column, column),
        }),
        { row: 0, column: 0 },
      );
  }
}

/** The line that is seen at a distance from the first one; the last one beyond them all. */
function lineAt(ends: readonly number[], distance: number): number {
  const at = ends.findIndex((end) => end > distance);
  return at < 0 ? ends.length - 1 : at;
}

/** The first line that is seen from a distance on, whole. */
function lineFrom(ends: readonly number[], distance: number): number {
  const at = ends.findIndex((end, index) => {
    const start = ends[index - 1] ?? 0;
    return start >= distance && end > start;
  });
  return Math.max(0, at);
}

/** The first line from one on that is not hidden. */
function firstOf(ends: readonly number[], from: number): number {
  return lineFrom(ends, ends[from - 1] ?? 0);
}
