/** Formulas without what the grid does not know: names that belong to one sheet, and references to tables. */
import type { Book } from "../workbook/book";
import { LocalNames } from "./local-names";
import { expandTables, type Place } from "./structured";

/** What words in formulas stand for. */
export type Vocabulary = Pick<Book, "definedNames" | "tables">;

/** The formula as it reads in a cell, in references that the grid knows. */
export type SpellOut = (formula: string, place: Place) => string;

export function spellingOut({ definedNames, tables }: Vocabulary): SpellOut {
  const names = new LocalNames(definedNames);
  return (formula, place) => expandTables(names.resolved(formula, place.sheet), tables, place);
}
