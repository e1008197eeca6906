import { addressOf } from "../address";
import type { Area, Sheet, Style } from "../book";
import { shiftedFormula } from "../formula/shared";
import type { FunctionNames } from "../formula/stored-form";
import type { ConditionalFormat, EntryRule } from "../sheet-rules";
import { WorkbookRefusal } from "../workbook-refusal";
import { isOn } from "../xml";
import type { Allowance } from "./allowance";
import { comparison } from "./comparison";
import { entryRule } from "./entry-rule";
import { areaIn } from "./place";

type Attributes = Readonly<Record<string, string>>;

/** What a sheet of a careful person stays far below. */
const MOST_RULES = 1000;

/** Kinds of conditional formats that bring their whole test along as a formula. */
const tested = new Set(
  "expression containsErrors notContainsErrors containsBlanks notContainsBlanks containsText notContainsText beginsWith endsWith timePeriod".split(
    " ",
  ),
);

const formulaElements = new Set(["formula", "formula1", "formula2", "f"]);

/**
 * Reads what a sheet paints over its cells and asks of those who type. Nothing in it is worth refusing a
 * file for: what is not understood, or is too much, is left out, and stays in the file as it is.
 */
export class SheetRules {
  readonly #formats: { priority: number; format: ConditionalFormat }[] = [];
  readonly #entryRules: EntryRule[] = [];
  #places = "";
  #rule: Attributes | undefined;
  #formulas: string[] = [];
  #text: string | undefined;

  constructor(
    private readonly looks: readonly Style[],
    private readonly names: FunctionNames,
    private readonly allowance: Allowance,
  ) {}

  open(name: string, attributes: Attributes): void {
    if (name === "conditionalFormatting") this.#places = attributes.sqref ?? "";
    if (name === "cfRule" || name === "dataValidation") {
      this.#rule = attributes;
      this.#formulas = [];
      if (name === "dataValidation") this.#places = attributes.sqref ?? "";
    }
    if (this.#rule && (formulaElements.has(name) || name === "sqref")) this.#text = "";
  }

  text(run: string): void {
    if (this.#text !== undefined) this.#text += run;
  }

  close(name: string): void {
    if (this.#rule && this.#text !== undefined && this.#text !== "") {
      if (name === "sqref") this.#places = this.#text;
      else this.#formulas.push(this.#text);
    }
    this.#text = undefined;
    if (!this.#rule || (name !== "cfRule" && name !== "dataValidation")) return;
    const rule = this.#rule;
    this.#rule = undefined;
    const formulas = this.#shownFormulas();
    if (!formulas) return;
    if (name === "cfRule") this.#addFormats(rule, formulas);
    else this.#addEntryRules(rule, formulas);
  }

  parts(): Pick<Sheet, "formats" | "entryRules"> {
    const formats = [...this.#formats]
      .sort((one, other) => one.priority - other.priority)
      .map(({ format }) => format);
    const entryRules = this.#entryRules;
    return {
      ...(formats.length > 0 && { formats }),
      ...(entryRules.length > 0 && { entryRules }),
    };
  }

  #shownFormulas(): string[] | undefined {
    try {
      return this.#formulas.map((formula) =>
        this.allowance.formula(formula, this.names, () => this.#places),
      );
    } catch (problem) {
      if (problem instanceof WorkbookRefusal) return undefined;
      throw problem;
    }
  }

  /** One for each area; a formula is written for the first cell of the first. */
  #addFormats(rule: Attributes, formulas: readonly string[]): void {
    const { fill, ink, bold, italic } = this.looks[Number(rule.dxfId)] ?? {};
    const look = {
      ...(fill !== undefined && { fill }),
      ...(ink !== undefined && { ink }),
      ...(bold && { bold }),
      ...(italic && { italic }),
    };
    const areas = this.#areas(this.#formats.length);
    const first = areas[0];
    const test = first && testOf(rule, formulas, addressOf(first.row, first.column));
    if (!first || test === undefined || Object.keys(look).length === 0) return;
    const at = shiftedFormula(test);
    for (const area of areas) {
      const formula = at(area.row - first.row, area.column - first.column);
      const stops = isOn(rule.stopIfTrue);
      const format = { area, formula, look, ...(stops && { stops }) };
      this.#formats.push({ priority: Number(rule.priority ?? 0), format });
    }
  }

  #addEntryRules(rule: Attributes, formulas: readonly string[]): void {
    const areas = this.#areas(this.#entryRules.length);
    const first = areas[0];
    if (!first) return;
    const [from, to] = formulas.map(shiftedFormula);
    for (const area of areas) {
      const rows = area.row - first.row;
      const columns = area.column - first.column;
      const read = entryRule(area, rule, from?.(rows, columns), to?.(rows, columns));
      if (read) this.#entryRules.push(read);
    }
  }

  #areas(known: number): Area[] {
    const places = this.#places.trim().split(/\s+/, MOST_RULES - known);
    return places.filter((place) => place !== "").flatMap(areasIn);
  }
}

/** A place that is none is left out. */
function areasIn(place: string): Area[] {
  try {
    return [areaIn(place)];
  } catch {
    return [];
  }
}

function testOf(
  { type = "", operator }: Attributes,
  [from, to]: readonly string[],
  cell: string,
): string | undefined {
  if (from === undefined) return undefined;
  return type === "cellIs"
    ? comparison(cell, operator, from, to)
    : tested.has(type)
      ? from
      : undefined;
}
