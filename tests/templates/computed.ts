import { inject } from "vitest";
import { openEngine } from "../../src/engine/node";
import type { Recalculation } from "../../src/engine/recalculation";
import { parseAddress } from "../../src/workbook/address";
import { type Book, cellAt, type Value } from "../../src/workbook/book";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { layOut } from "../../src/workbook/layout/lay-out";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import type { Plan } from "../../src/workbook/plan";

const functions = inject("functions");
export const functionIds: readonly string[] = functions.metadata.functions.map(({ id }) => id);
export const names = functionNames(functionIds);
const engine = openEngine(functions);

export const recalculated = (book: Book): Promise<Recalculation> => engine.recalculate(book);

/** A plan laid out and computed, with the rules and charts of the plan. */
export async function computed(
  plan: Plan,
): Promise<{ book: PlannedBook; failures: Recalculation["failures"] }> {
  const planned = layOut(plan);
  const { book, failures } = await recalculated(planned);
  const sheets = planned.sheets.map((sheet, index) => ({ ...sheet, ...book.sheets[index] }));
  return { book: { ...planned, sheets }, failures };
}

/** What the cell of a defined name holds. */
export function valueNamed(book: Book, name: string): Value {
  const defined = book.definedNames.find((its) => its.name === name);
  const [sheetName, address] = (defined?.formula ?? "").split("!");
  const sheet = book.sheets.find((its) => its.name === sheetName?.replace(/^'|'$/g, ""));
  if (!sheet || address === undefined) throw new Error(`The book has no cell named "${name}".`);
  const { row, column } = parseAddress(address);
  return cellAt(sheet, row, column)?.value ?? null;
}

export const numberOf = (book: Book, name: string): number => {
  const value = valueNamed(book, name);
  if (typeof value !== "number") throw new Error(`${name} is ${JSON.stringify(value)}.`);
  return value;
};
