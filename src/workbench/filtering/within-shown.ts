/** What of selected rows a filter leaves, and what is said where it leaves too little. */
import type { IRange } from "@univerjs/core";

export type IsHidden = (row: number) => boolean;

export const NONE_SHOWN = "A filter hides the selected cells. Select cells that show.";
export const NOT_CUT =
  "Nothing was cut: a filter hides rows in the selection. Copy the cells instead, or clear the filter first.";
export const NOT_MOVED =
  "Nothing was moved: a filter hides rows there. Copy the cells instead, or clear the filter first.";

type Rows = Pick<IRange, "startRow" | "endRow">;

export function rowsShown({ startRow, endRow }: Rows, isHidden: IsHidden): number[] {
  const rows: number[] = [];
  for (let row = startRow; row <= endRow; row++) if (!isHidden(row)) rows.push(row);
  return rows;
}

export const holdsHidden = (range: Rows, isHidden: IsHidden): boolean =>
  rowsShown(range, isHidden).length <= range.endRow - range.startRow;

export interface Fill {
  readonly sourceRange: IRange;
  /** With the source. */
  readonly targetRange: IRange;
}

/**
 * Filling selected cells down: from the first row that shows, a single one from the row that shows above it.
 * Undefined where there is none.
 */
export function fillOf(selected: IRange, isHidden: IsHidden): Fill | undefined {
  const [first = -1, second] = rowsShown(selected, isHidden);
  let source = first;
  if (second === undefined)
    do source--;
    while (source >= 0 && isHidden(source));
  if (source < 0) return undefined;
  return {
    sourceRange: { ...selected, startRow: source, endRow: source },
    targetRange: { ...selected, startRow: source },
  };
}
