import { addressOf } from "../address";
import type { Area, Cell, Cells, Extent, Sheet, Value } from "../book";
import { shiftedFormula } from "../formula/shared";
import type { FunctionNames } from "../formula/stored-form";
import type { RuleLook } from "../sheet-rules";
import { WorkbookRefusal } from "../workbook-refusal";
import type { XmlElement, XmlHandlers } from "../xml";
import type { Allowance } from "./allowance";
import { cellValue } from "./cell-value";
import type { Theme } from "./colours";
import { FilterReader } from "./filter";
import { areaIn, Place } from "./place";
import { SheetFrame } from "./sheet-frame";
import { SheetRules } from "./sheet-rules";
import { SpillAreas } from "./spill-areas";
import { styleName } from "./styles";

/** What the sheets of a workbook share while they are read. */
export interface Reading {
  readonly names: FunctionNames;
  readonly strings: readonly string[];
  readonly dynamicMarks: ReadonlySet<number>;
  readonly styleCount: number;
  /** What conditional formats put over cells. */
  readonly differences: readonly RuleLook[];
  readonly theme: Theme;
  readonly allowance: Allowance;
}

type Attributes = Readonly<Record<string, string>>;
type Changeable<T> = { -readonly [Key in keyof T]: T[Key] };

interface Shared {
  readonly row: number;
  readonly column: number;
  readonly at: (rows: number, columns: number) => string;
}

/** A few whole columns; no formula that somebody uses fills more. */
const mostFilled = 4_000_000;

const textElements: ReadonlySet<string> = new Set(["v", "f", "t"]);

/** Reads the XML of one sheet, event by event. */
export class SheetReader implements XmlHandlers {
  readonly #cells: Record<number, Record<number, Cell>> = {};
  readonly #shared = new Map<string, Shared>();
  readonly #areas: Area[] = [];
  readonly #place = new Place();
  readonly #frame: SheetFrame;
  readonly #rules: SheetRules;
  readonly #filter = new FilterReader();
  #row: Record<number, Cell> | undefined;
  #cell: Attributes | undefined;
  #formula: Attributes | undefined;
  #formulaText = "";
  #valueText: string | undefined;
  #inText = "";
  #inAid = false;

  constructor(
    private readonly reading: Reading,
    path: string,
  ) {
    this.#frame = new SheetFrame(reading.allowance, reading.styleCount);
    this.#rules = new SheetRules(path, reading);
  }

  open(element: XmlElement): void {
    const { name, attributes } = element;
    if (name === "row") {
      this.#row = undefined;
      this.#frame.row(this.#place.enterRow(attributes.r), attributes);
    } else if (name === "c") this.#openCell(attributes);
    else if (this.#cell) this.#openInside(name, attributes);
    else {
      this.#frame.open(name, attributes);
      this.#rules.open(name, attributes);
      this.#filter.open(name, attributes);
    }
  }

  close(name: string): void {
    if (name === "c" && this.#cell) this.#closeCell(this.#cell);
    if (name === this.#inText) this.#inText = "";
    if (name === "rPh") this.#inAid = false;
    if (this.#cell) return;
    this.#rules.close(name);
    this.#filter.close(name);
  }

  text(run: string): void {
    if (this.#inText === "f") this.#formulaText += run;
    else if (this.#inText !== "") this.#valueText = (this.#valueText ?? "") + run;
    else if (!this.#cell) this.#rules.text(run);
  }

  #openCell(attributes: Attributes): void {
    this.#place.enterCell(attributes.r);
    this.#cell = attributes;
    this.#formula = undefined;
    this.#formulaText = "";
    this.#valueText = undefined;
  }

  #openInside(name: string, attributes: Attributes): void {
    if (name === "f") this.#formula = attributes;
    if (name === "v" || name === "is") this.#valueText ??= "";
    if (name === "rPh") this.#inAid = true;
    if (textElements.has(name) && !this.#inAid) this.#inText = name;
  }

  #closeCell(attributes: Attributes): void {
    this.#cell = undefined;
    const { row, column } = this.#place;
    const { strings, styleCount, allowance } = this.reading;
    const address = addressOf(row, column);
    const value = cellValue(attributes.t, this.#valueText ?? "", strings, address);
    const formula = this.#shownFormula(row, column);
    const style = Number(attributes.s ?? 0);
    const styled = style > 0 && style < styleCount;
    if ((this.#valueText === undefined || value === null) && formula === undefined && !styled)
      return;
    allowance.cell();
    const cell: Changeable<Cell> = { value: value as Value };
    if (formula !== undefined) cell.formula = formula;
    if (styled) cell.style = styleName(style);
    if (this.#formula?.t === "array") this.#markArray(cell, row, column, attributes.cm);
    if (!this.#row) {
      this.#cells[row] ??= {};
      this.#row = this.#cells[row] as Record<number, Cell>;
    }
    this.#row[column] = cell;
  }

  #shownFormula(row: number, column: number): string | undefined {
    const formula = this.#formula;
    // A what-if table is no formula of its cells: its values are kept as they are.
    if (!formula || formula.t === "dataTable") return undefined;
    const text = this.#formulaText;
    const { allowance, names } = this.reading;
    const shownText = () => allowance.formula(text, names, () => addressOf(row, column));
    if (formula.t !== "shared" || formula.si === undefined)
      return text === "" ? undefined : shownText();
    if (text !== "") {
      const shown = shownText();
      this.#shared.set(formula.si, { row, column, at: shiftedFormula(shown) });
      return shown;
    }
    const shared = this.#shared.get(formula.si);
    if (!shared)
      throw new WorkbookRefusal(
        `The file is damaged: ${addressOf(row, column)} shares a formula that is nowhere.`,
      );
    return allowance.written(shared.at(row - shared.row, column - shared.column));
  }

  #markArray(cell: Changeable<Cell>, row: number, column: number, cm: string | undefined): void {
    const area = areaIn(this.#formula?.ref ?? addressOf(row, column));
    if (area.row !== row || area.column !== column)
      throw new WorkbookRefusal(
        `The file is damaged: the array formula at ${addressOf(row, column)} fills cells elsewhere.`,
      );
    if (area.rows * area.columns > mostFilled)
      throw new WorkbookRefusal(
        `The array formula at ${addressOf(row, column)} fills more cells than are read.`,
      );
    cell.spill = { rows: area.rows, columns: area.columns } satisfies Extent;
    if (!this.reading.dynamicMarks.has(Number(cm))) cell.fixed = true;
    if (area.rows > 1 || area.columns > 1) this.#areas.push(area);
  }

  #markSpilled(): void {
    if (this.#areas.length === 0) return;
    const areas = new SpillAreas(this.#areas);
    for (const [row, cells] of Object.entries(this.#cells)) {
      areas.enter(Number(row));
      for (const [column, cell] of Object.entries(cells))
        if (cell.formula === undefined && areas.at(Number(column)))
          cells[Number(column)] = { ...cell, spilled: true };
    }
  }

  sheet(name: string, hidden: boolean): Sheet {
    this.#markSpilled();
    const cells: Cells = this.#cells;
    const frame = this.#frame.parts();
    const filter = this.#filter.filter();
    const around = { ...frame, ...this.#rules.parts(), ...(filter ? { filter } : {}) };
    return { name, cells, ...around, ...(hidden ? { hidden } : {}) };
  }
}
