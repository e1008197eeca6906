import { columnIndex, columnName } from "../address";
import { joined, type Token, tokensOf } from "./tokens";

/** Size of a sheet; a shared formula that leaves it on one side comes in on the other. */
export const sheetRows = 1_048_576;
export const sheetColumns = 16_384;

const wrapped = (value: number, size: number) => ((value % size) + size) % size;

const row = (text: string, by: number): string =>
  text.startsWith("$") ? text : `${wrapped(Number(text) - 1 + by, sheetRows) + 1}`;

const column = (text: string, by: number): string =>
  text.startsWith("$") ? text : columnName(wrapped(columnIndex(text) + by, sheetColumns));

function shifted({ kind, text }: Token, rows: number, columns: number): string {
  if (kind === "rows")
    return text
      .split(":")
      .map((part) => row(part, rows))
      .join(":");
  if (kind === "columns")
    return text
      .split(":")
      .map((part) => column(part, columns))
      .join(":");
  if (kind !== "cell") return text;
  const [, letters, digits] = /^(\$?[A-Za-z]+)(\$?\d+)$/.exec(text) as unknown as string[];
  return column(letters as string, columns) + row(digits as string, rows);
}

/** A formula as it reads so many rows down and columns to the right: what a shared formula means there. */
export function shiftedFormula(formula: string): (rows: number, columns: number) => string {
  const tokens = tokensOf(formula);
  const moves = tokens.some(({ kind }) => kind === "cell" || kind === "columns" || kind === "rows");
  if (!moves) return () => joined(tokens);
  return (rows, columns) => tokens.map((token) => shifted(token, rows, columns)).join("");
}
