/** Cells that a formula of a rule names, followed as they are seen from the first cell of the rule. */
import type { Area } from "../../workbook/book";
import type { Naming, Read } from "./followed";

interface Place {
  readonly sheetId: string;
  readonly area: Area;
}

/** Those of a rule that is written for the first cell of `home`. */
export function readFrom(
  home: Place,
  { sheetId, area }: Place,
  rows: Naming["relative"],
  columns: Naming["relative"],
): Read {
  const naming = (relative: Naming["relative"], distance: number, size: number, most: number) => {
    const isBeside = relative.every(Boolean) && distance >= 0 && distance < most;
    return sheetId === home.sheetId && isBeside
      ? { relative, beside: { distance, size } }
      : { relative };
  };
  const read: Read = {
    sheetId,
    area,
    bond: "named",
    rows: naming(rows, area.row - home.area.row, area.rows, home.area.rows),
    columns: naming(columns, area.column - home.area.column, area.columns, home.area.columns),
  };
  return beside(read, home);
}

/** What stands beside the cells of the rule, put there. */
export function beside(read: Read, { sheetId, area }: Place): Read {
  const { rows, columns } = read;
  const inRows = rows.beside && {
    row: area.row + rows.beside.distance,
    rows: area.rows + rows.beside.size - 1,
  };
  const inColumns = columns.beside && {
    column: area.column + columns.beside.distance,
    columns: area.columns + columns.beside.size - 1,
  };
  const itsSheet = inRows && inColumns ? sheetId : read.sheetId;
  // Beside cells of another sheet there is nothing: it stays where it is.
  if (itsSheet !== sheetId && (inRows || inColumns)) return apart(read);
  return { ...read, sheetId: itsSheet, area: { ...read.area, ...inRows, ...inColumns } };
}

const apart = (read: Read): Read => ({
  ...read,
  area: firstRead(read),
  rows: { relative: read.rows.relative },
  columns: { relative: read.columns.relative },
});

/** As they are seen from the first cell of a part of the rule. */
export function seenFrom(read: Read, home: Place, part: Area): Read {
  const { row, rows } = read.area;
  const { column, columns } = read.area;
  const [down, right] = [part.row - home.area.row, part.column - home.area.column];
  const far = (by: number, relative: boolean) => (relative ? by : 0);
  const [first, last] = read.rows.relative.map((one) => far(down, one)) as [number, number];
  const [left, end] = read.columns.relative.map((one) => far(right, one)) as [number, number];
  const area = {
    row: row + first,
    rows: rows + last - first,
    column: column + left,
    columns: columns + end - left,
  };
  return beside({ ...read, area }, { ...home, area: part });
}

/** The cells that the first cell of the rule reads. */
export function firstRead({ area, rows, columns }: Read): Area {
  return {
    ...area,
    ...(rows.beside && { rows: rows.beside.size }),
    ...(columns.beside && { columns: columns.beside.size }),
  };
}
