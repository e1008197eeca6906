import { columnIndex, parseArea } from "../address";
import type { Area } from "../book";
import { sheetColumns, sheetRows } from "../formula/shared";
import { WorkbookRefusal } from "../workbook-refusal";

const outside = (what: string) =>
  new WorkbookRefusal(
    `The file is damaged: ${JSON.stringify(what.slice(0, 40))} is no place on a sheet.`,
  );

/** An area as a file writes it: B4 or B4:C9, inside the sheet. */
export function areaIn(text: string): Area {
  if (!/^\$?[A-Za-z]{1,3}\$?\d{1,7}(?::\$?[A-Za-z]{1,3}\$?\d{1,7})?$/.test(text))
    throw outside(text);
  const area = parseArea(text);
  if (area.row < 0 || area.row + area.rows > sheetRows || area.column + area.columns > sheetColumns)
    throw outside(text);
  return area;
}

/**
 * Rows and cells may leave out where they are and then follow the one before. Both the reader and
 * the one who splices ask here, so that they agree on every place.
 */
export class Place {
  row = -1;
  column = -1;

  enterRow(r: string | undefined): number {
    this.row = r === undefined ? this.row + 1 : Number(r) - 1;
    this.column = -1;
    if (!Number.isInteger(this.row) || this.row < 0 || this.row >= sheetRows)
      throw outside(`row ${r ?? this.row + 1}`);
    return this.row;
  }

  enterCell(r: string | undefined): number {
    if (r === undefined) this.column++;
    else {
      const parts = /^([A-Za-z]{1,3})([1-9]\d{0,6})$/.exec(r);
      if (!parts || Number(parts[2]) - 1 !== this.row) throw outside(r);
      this.column = columnIndex(parts[1] as string);
    }
    if (this.column >= sheetColumns) throw outside(r ?? `column ${this.column + 1}`);
    return this.column;
  }
}
