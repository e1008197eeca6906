import { addressOf } from "../address";
import type { Area, Sheet } from "../book";
import { shiftedFormula } from "../formula/shared";
import type { ConditionalFormat, EntryRule, InFile } from "../sheet-rules";
import { WorkbookRefusal } from "../workbook-refusal";
import { isOn } from "../xml";
import { attributesXml, escapeFormula } from "../xml-text";
import { withoutTheme } from "./colours";
import { comparison } from "./comparison";
import { entryRule } from "./entry-rule";
import { areaIn } from "./place";
import type { Reading } from "./sheet";

type Attributes = Readonly<Record<string, string>>;

/** What a sheet of a careful person stays far below. */
const MOST_RULES = 1000;

/** Kinds of conditional formats that bring their whole test along as a formula. */
const tested = new Set(
  "expression containsErrors notContainsErrors containsBlanks notContainsBlanks containsText notContainsText beginsWith endsWith timePeriod".split(
    " ",
  ),
);

/** Kinds that compare all their cells with one another. */
const rankings = new Set(
  "colorScale dataBar iconSet top10 aboveAverage duplicateValues uniqueValues".split(" "),
);

const formulaElements = new Set(["formula", "formula1", "formula2", "f"]);

/**
 * Reads what a sheet paints over its cells and asks of those who type. Nothing in it is worth refusing a
 * file for: what is not understood, or is too much, is left out and counted, and stays in the file as it is.
 */
export class SheetRules {
  readonly #formats: { readonly priority: number; format: ConditionalFormat }[] = [];
  readonly #entryRules: EntryRule[] = [];
  #unread = 0;
  #places = "";
  #rule: Attributes | undefined;
  #formulas: string[] = [];
  #inner = "";
  #text: string | undefined;
  /** An extension of the sheet, which may say more of a rule that stands before it. */
  #extended = false;
  /** An extension of one rule. */
  #aside = false;
  /** By the names that extensions of the sheet call them: what is said of bars before. */
  readonly #said = new Map<string, { format: ConditionalFormat }[]>();
  #id: string | undefined;

  /** Of each kind, how many there were. */
  readonly #counts = { cfRule: 0, dataValidation: 0 };

  constructor(
    private readonly path: string,
    private readonly reading: Pick<Reading, "differences" | "theme" | "names" | "allowance">,
  ) {}

  open(name: string, attributes: Attributes): void {
    if (name === "extLst" && !this.#rule) this.#extended = true;
    if (name === "conditionalFormatting") this.#places = attributes.sqref ?? "";
    if (name === "cfRule" || name === "dataValidation") {
      this.#counts[name]++;
      this.#rule = attributes;
      this.#formulas = [];
      this.#inner = "";
      this.#id = undefined;
      if (name === "dataValidation") this.#places = attributes.sqref ?? "";
    } else if (this.#rule) this.#openInside(name, attributes);
  }

  #openInside(name: string, attributes: Attributes): void {
    if (name === "extLst") this.#aside = true;
    else if (!this.#aside)
      this.#inner += `<${name}${attributesXml(withoutTheme(attributes, this.reading.theme))}>`;
    if (formulaElements.has(name) || name === "sqref" || name === "id") this.#text = "";
  }

  text(run: string): void {
    if (this.#text !== undefined) this.#text += run;
  }

  close(name: string): void {
    if (this.#rule && this.#text !== undefined && this.#text !== "") {
      if (name === "sqref") this.#places = this.#text;
      else if (name === "id") this.#id = this.#text;
      else this.#formulas.push(this.#text);
      // Bounds of bars in an extension.
      if (name === "f") this.#inner += escapeFormula(this.#text);
    }
    this.#text = undefined;
    if (!this.#rule) return;
    if (name === "cfRule" || name === "dataValidation") this.#closeRule(name, this.#rule);
    else if (name === "extLst") this.#aside = false;
    else if (!this.#aside) this.#inner += `</${name}>`;
  }

  #closeRule(name: string, rule: Attributes): void {
    this.#rule = undefined;
    if (name === "cfRule" && this.#extended) {
      this.#extend(rule.id ?? "");
      return;
    }
    if (this.#id !== undefined) this.#said.set(this.#id, []);
    const formulas = this.#shownFormulas();
    const read =
      formulas !== undefined &&
      (name === "cfRule" ? this.#addFormats(rule, formulas) : this.#addEntryRules(rule, formulas));
    if (!read) this.#unread++;
  }

  #extend(id: string): void {
    if (!this.#said.has(id)) this.#unread++;
    for (const bars of this.#said.get(id) ?? []) {
      const { ranking } = bars.format;
      if (ranking)
        bars.format = { ...bars.format, ranking: { ...ranking, extension: this.#inner } };
    }
  }

  parts(): Pick<Sheet, "formats" | "entryRules" | "unreadRules"> {
    const formats = [...this.#formats]
      .sort((one, other) => one.priority - other.priority)
      .map(({ format }) => format);
    const entryRules = this.#entryRules;
    return {
      ...(formats.length > 0 && { formats }),
      ...(entryRules.length > 0 && { entryRules }),
      ...(this.#unread > 0 && { unreadRules: this.#unread }),
    };
  }

  #shownFormulas(): string[] | undefined {
    const { allowance, names } = this.reading;
    try {
      return this.#formulas.map((formula) => allowance.formula(formula, names, () => this.#places));
    } catch (problem) {
      if (problem instanceof WorkbookRefusal) return undefined;
      throw problem;
    }
  }

  /** One for each area; a ranking is the same for all of them, a formula is written for the first cell of the first. */
  #addFormats(rule: Attributes, formulas: readonly string[]): boolean {
    const stops = isOn(rule.stopIfTrue);
    const look = this.reading.differences[Number(rule.dxfId)] ?? {};
    const shared = { inFile: this.#inFile("cfRule"), look, ...(stops && { stops }) };
    const add = (format: ConditionalFormat) =>
      this.#formats.push({ priority: Number(rule.priority ?? 0), format });
    const areas = this.#areas(this.#formats.length);
    const [first] = areas;
    if (!first) return false;
    if (rankings.has(rule.type ?? "")) {
      if (namesCells(this.#inner)) return false;
      const ranking = { attributes: kept(rule), inner: this.#inner };
      for (const area of areas) add({ area, ranking, ...shared });
      if (rule.type === "dataBar" && this.#id !== undefined)
        this.#said.set(this.#id, this.#formats.slice(-areas.length));
      return true;
    }
    const test = testOf(rule, formulas, addressOf(first.row, first.column));
    if (test === undefined) return false;
    if (Object.keys(look).length === 0 && !stops) return true;
    const at = shiftedFormula(test);
    for (const area of areas)
      add({ area, formula: at(area.row - first.row, area.column - first.column), ...shared });
    return true;
  }

  #addEntryRules(rule: Attributes, formulas: readonly string[]): boolean {
    const areas = this.#areas(this.#entryRules.length);
    const [first] = areas;
    if (!first) return false;
    const [from, to] = formulas.map(shiftedFormula);
    const read = areas.flatMap((area) => {
      const rows = area.row - first.row;
      const columns = area.column - first.column;
      const read = entryRule(area, rule, from?.(rows, columns), to?.(rows, columns));
      return read ? { ...read, inFile: this.#inFile("dataValidation") } : [];
    });
    this.#entryRules.push(...read);
    return read.length > 0;
  }

  #inFile(kind: "cfRule" | "dataValidation"): InFile {
    return { sheet: this.path, index: this.#counts[kind] - 1 };
  }

  #areas(known: number): Area[] {
    const most = MOST_RULES - known;
    const places = this.#places.trim().split(/\s+/, most + 1);
    if (places.length > most && most > 0) this.#unread++;
    return places
      .slice(0, most)
      .filter((place) => place !== "")
      .flatMap(areasIn);
  }
}

/** What is the rule's own, apart from its place in a file. */
const kept = ({ dxfId: _look, priority: _priority, stopIfTrue: _stops, ...own }: Attributes) =>
  Object.fromEntries(Object.entries(own).filter(([name]) => !name.includes(":")));

/** Whether a bound of the rule is read from a cell. */
const namesCells = (inner: string) => / val="(?![^"a-z]*")[^"]*"/i.test(inner);

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
