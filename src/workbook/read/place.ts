import { columnIndex, parseArea } from "../address";
import type { Area } from "../book";
import { sheetColumns, sheetRows } from "../formula/shared";
import { WorkbookRefusal } from "../workbook-refusal";

const outside = (what: string) =>
  new WorkbookRefusal(
    `The file is damaged: ${JSON.stringify(what.slice(0, 40))} is no place on a sheet.`,
  );

const outOfOrder = (what: string) =>
  new WorkbookRefusal(`The file is damaged: ${what} does not come after the one before it.`);

/** An area as a file writes it: B4 or B4:C9, inside the sheet. */
export function areaIn(text: string): Area {
  if (!/^\$?[A-Za-z]{1,3}\$?\d{1,7}(?::\$?[A-Za-z]{1,3}\$?\d{1,7})?$/.test(text))
    throw outside(text);
  const area = parseArea(text);
  if (area.row < 0 || area.row + area.rows > sheetRows || area.column + area.columns > sheetColumns)
    throw outside(text);
  return area;
}

/** The same where a file may name no area at all. */
export function areaIfAny(text: string): Area | undefined {
  try {
    return areaIn(text);
  } catch (problem) {
    if (problem instanceof WorkbookRefusal) return undefined;
    throw problem;
  }
}

/**
 * Rows and cells may leave out where they are and then follow the one before. Both the reader and
 * the one who splices ask here, so that they agree on every place.
 */
export class Place {
  row = -1;
  column = -1;

  enterRow(r: string | undefined): number {
    const row = r === undefined ? this.row + 1 : Number(r) - 1;
    if (!Number.isInteger(row) || row < 0 || row >= sheetRows) throw outside(`row ${r ?? row + 1}`);
    if (row <= this.row) throw outOfOrder(`row ${row + 1}`);
    this.row = row;
    this.column = -1;
    return row;
  }

  enterCell(r: string | undefined): number {
    let column = this.column + 1;
    if (r !== undefined) {
      const parts = /^([A-Za-z]{1,3})([1-9]\d{0,6})$/.exec(r);
      if (!parts || Number(parts[2]) - 1 !== this.row) throw outside(r);
      column = columnIndex(parts[1] as string);
    }
    if (column >= sheetColumns) throw outside(r ?? `column ${column + 1}`);
    if (column <= this.column) throw outOfOrder(r ?? `column ${column + 1}`);
    this.column = column;
    return column;
  }
}
