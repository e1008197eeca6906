/** Said by every host where a place is asked for that the workbook does not have. */
export const NO_SUCH_PLACE =
  "The sheet or the cells are not there any more. Select a cell and try again.";

/** A place in a workbook: the sheet's plain name and the cells on it. */
export interface Place {
  readonly sheet: string;
  readonly cells: string;
}

/** 'Mill log'!$B$4 → the cells B4 of the sheet Mill log. */
export function placeOf(address: string): Place {
  const mark = address.lastIndexOf("!");
  const sheet = address.slice(0, Math.max(mark, 0)).replace(/^'(.*)'$/, "$1");
  return {
    sheet: sheet.replaceAll("''", "'"),
    cells: address.slice(mark + 1).replaceAll("$", ""),
  };
}

/** One key for every way of writing a place. */
export function placeKey(address: string): string {
  const { sheet, cells } = placeOf(address);
  return `${sheet}!${cells}`.toLowerCase();
}
