import type { Recalculation } from "../../src/engine/recalculation";
import { parseAddress } from "../../src/workbook/address";
import type { Book, Cell, Sheet, Value } from "../../src/workbook/book";

/** A sheet from its cells by address; a text that starts with "=" is a formula. */
export function sheet(name: string, content: Record<string, Value | Cell>): Sheet {
  const cells: Record<number, Record<number, Cell>> = {};
  for (const [address, given] of Object.entries(content)) {
    const { row, column } = parseAddress(address);
    const cell =
      typeof given === "object" && given !== null && "value" in given
        ? given
        : typeof given === "string" && given.startsWith("=")
          ? { value: null, formula: given.slice(1) }
          : { value: given };
    cells[row] = { ...cells[row], [column]: cell };
  }
  return { name, cells };
}

export const book = (sheets: readonly Sheet[], rest: Partial<Book> = {}): Book => ({
  sheets,
  definedNames: [],
  tables: [],
  styles: {},
  ...rest,
});

export function cell(
  of: Recalculation | Book,
  address: string,
  sheetName?: string,
): Cell | undefined {
  const whole = "book" in of ? of.book : of;
  const found = sheetName ? whole.sheets.find(({ name }) => name === sheetName) : whole.sheets[0];
  const { row, column } = parseAddress(address);
  return found?.cells[row]?.[column];
}

/** What a cell shows: its value, or the text of its error. */
export function shown(of: Recalculation | Book, address: string, sheetName?: string): unknown {
  const value = cell(of, address, sheetName)?.value ?? null;
  return typeof value === "object" && value !== null ? value.error : value;
}
