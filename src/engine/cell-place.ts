/** Where a cell is, also after its sheet was given another name. */
export interface CellPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

export const samePlace = (one: CellPlace, other: CellPlace): boolean =>
  one.sheetId === other.sheetId && one.row === other.row && one.column === other.column;

/** The same for the same cell, and for no other. */
export const keyOfPlace = ({ sheetId, row, column }: CellPlace): string =>
  `${sheetId}!${row},${column}`;
