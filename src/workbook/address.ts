import type { Area } from "./book";

/** 0 → A, 25 → Z, 26 → AA. */
export function columnName(column: number): string {
  let name = "";
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1)
    name = String.fromCharCode(65 + (rest % 26)) + name;
  return name;
}

/** A → 0, AA → 26; small letters count as capitals. */
export function columnIndex(name: string): number {
  let index = 0;
  for (const letter of name.toUpperCase()) index = index * 26 + letter.charCodeAt(0) - 64;
  return index - 1;
}

/** Row 3, column 1 → B4. */
export const addressOf = (row: number, column: number): string => `${columnName(column)}${row + 1}`;

/** B4, $B$4 → row 3, column 1. */
export function parseAddress(address: string): { row: number; column: number } {
  const parts = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})$/.exec(address);
  if (!parts) throw new Error(`${JSON.stringify(address)} is not the address of a cell.`);
  return { row: Number(parts[2]) - 1, column: columnIndex(parts[1] as string) };
}

/** B4:C9 (or B4 alone) → where it starts and how far it reaches. */
export function parseArea(address: string): Area {
  const [first, last] = address.split(":");
  const from = parseAddress(first as string);
  const to = last === undefined ? from : parseAddress(last);
  const row = Math.min(from.row, to.row);
  const column = Math.min(from.column, to.column);
  return {
    row,
    column,
    rows: Math.abs(to.row - from.row) + 1,
    columns: Math.abs(to.column - from.column) + 1,
  };
}

export function areaAddress({ row, column, rows, columns }: Area): string {
  const first = addressOf(row, column);
  return rows === 1 && columns === 1
    ? first
    : `${first}:${addressOf(row + rows - 1, column + columns - 1)}`;
}

/** With dollar signs everywhere. */
export const fixedAddress = (area: Area): string =>
  areaAddress(area).replaceAll(/([A-Z]+)(\d+)/g, "$$$1$$$2");

/** A sheet's name as a formula writes it: quoted where it is no plain word. */
export const sheetPrefix = (name: string): string =>
  /^[A-Za-z_][A-Za-z0-9_]*$/.test(name) && !/^[A-Za-z]{1,3}\d+$/.test(name)
    ? `${name}!`
    : `'${name.replaceAll("'", "''")}'!`;
