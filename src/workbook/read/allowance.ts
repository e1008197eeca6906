import { type FunctionNames, shownFormula } from "../formula/stored-form";
import { tokensOf } from "../formula/tokens";
import type { Limits } from "../package/limits";
import { WorkbookRefusal } from "../workbook-refusal";

/**
 * What a spreadsheet lets one formula be. Source: "Excel specifications and limits" (Microsoft support):
 * 8,192 characters, functions inside one another to 64 levels.
 */
const longestFormula = 8192;
const deepestFormula = 64;

/** Prefixes make the stored form of a formula longer than what people see, never so much. */
const longestStored = 8 * longestFormula;

/** Counts what a workbook holds in all its sheets together, and refuses when it is too much. */
export class Allowance {
  #cells = 0;
  #merged = 0;
  #formulas = 0;

  constructor(private readonly limits: Limits) {}

  cell(): void {
    if (++this.#cells > this.limits.cells) throw tooMany(this.limits.cells, "cells");
  }

  mergedArea(): void {
    if (++this.#merged > this.limits.merged) throw tooMany(this.limits.merged, "merged areas");
  }

  /** A formula in the form that people see; `place` says where it stands. */
  formula(stored: string, names: FunctionNames, place: () => string): string {
    if (stored.length > longestStored) throw tooLong(place(), stored.length);
    const shown = shownFormula(stored, names);
    if (shown.length > longestFormula) throw tooLong(place(), shown.length);
    if (isTooDeep(shown))
      throw new WorkbookRefusal(
        `The file is damaged: the formula of ${place()} puts functions inside one another deeper than the ${deepestFormula} levels that a spreadsheet allows.`,
      );
    return this.written(shown);
  }

  /** A formula that is written out from another. */
  written(formula: string): string {
    this.#formulas += formula.length;
    if (this.#formulas > this.limits.formulas)
      throw tooMany(this.limits.formulas, "characters of formulas");
    return formula;
  }
}

const tooMany = (limit: number, what: string) =>
  new WorkbookRefusal(
    `The file holds more than ${limit.toLocaleString("en")} ${what}, which is the most that is read.`,
  );

const tooLong = (place: string, length: number) =>
  new WorkbookRefusal(
    `The file is damaged: the formula of ${place} has ${length.toLocaleString("en")} characters, and a spreadsheet allows ${longestFormula.toLocaleString("en")}.`,
  );

function isTooDeep(formula: string): boolean {
  if (formula.split("(", deepestFormula + 2).length <= deepestFormula + 1) return false;
  const calls: boolean[] = [];
  let depth = 0;
  let before = "";
  for (const { kind, text } of tokensOf(formula)) {
    if (kind === "mark" && text === "(") {
      calls.push(before === "function");
      if (before === "function" && ++depth > deepestFormula) return true;
    } else if (kind === "mark" && text === ")" && calls.pop()) depth--;
    before = kind;
  }
  return false;
}
