/** What the formulas of a computed book read. */
import { holdsCell } from "../workbook/areas";
import { type Area, type Book, type Cell, cellAt, isError, type Value } from "../workbook/book";
import { cellsOf, cellsWithin } from "../workbook/cells-within";
import { type Region, regionsOf } from "../workbook/formula/regions";
import { type SpellOut, spellingOut } from "./spelled-out";
import type { Place } from "./structured";

/** A formula, and how far from its own cell the one stands that is asked about. */
export interface Filling {
  readonly text: string;
  readonly place: Place;
  readonly down: number;
  readonly across: number;
}

export interface ReadCell {
  readonly place: Place;
  readonly value: Value;
}

interface Spill {
  readonly area: Area;
  readonly formula: string;
}

/** Rows of one column in which an error stands, from the top. */
type Failing = readonly { readonly row: number; readonly error: string }[];

interface Known {
  readonly spills: readonly Spill[];
  readonly failing: ReadonlyMap<number, Failing>;
}

const keyOf = (sheet: string) => sheet.toLowerCase();

export class Precedents {
  readonly #sheets: ReadonlyMap<string, Book["sheets"][number]>;
  readonly #known = new Map<string, Known>();
  readonly #spellOut: SpellOut;

  constructor(private readonly book: Book) {
    this.#spellOut = spellingOut(book);
    this.#sheets = new Map(book.sheets.map((sheet) => [keyOf(sheet.name), sheet]));
  }

  /** The formula that filled a cell: its own, or one that spilled into it. */
  formulaAt(place: Place): Filling | undefined {
    const { sheet, row, column } = place;
    const own = this.#cellAt(place);
    const spill = own?.spilled
      ? this.#knownOf(sheet).spills.find(({ area }) => holdsCell(area, row, column))
      : undefined;
    const formula = spill?.formula ?? own?.formula;
    if (formula === undefined) return undefined;
    const from = { sheet, row: spill?.area.row ?? row, column: spill?.area.column ?? column };
    const text = this.#spellOut(formula, from);
    return { text, place: from, down: row - from.row, across: column - from.column };
  }

  /** Of the cells that a part of a formula names, one that shows this error. */
  failingIn(filling: Filling, part: string, error: string): Place | undefined {
    for (const region of regionsOf(part, filling.place.sheet, this.book)) {
      const beside = besideOf(region, filling);
      const value = beside && this.#cellAt(beside)?.value;
      if (value && isError(value) && value.error === error) return beside;
      const found = this.#firstFailing(region, error);
      if (found) return found;
    }
    return undefined;
  }

  /** The cells that a part of a formula names: of each range the one beside the cell first, blank or not. */
  *cellsIn(filling: Filling, part: string): Generator<ReadCell> {
    for (const region of regionsOf(part, filling.place.sheet, this.book)) {
      const sheet = this.#sheets.get(keyOf(region.sheet));
      if (!sheet) continue;
      const beside = besideOf(region, filling);
      if (beside) yield { place: beside, value: this.#cellAt(beside)?.value ?? null };
      for (const [row, column, { value }] of cellsWithin(sheet, region.area))
        yield { place: { sheet: sheet.name, row, column }, value };
    }
  }

  #cellAt({ sheet, row, column }: Place): Cell | undefined {
    const cells = this.#sheets.get(keyOf(sheet));
    return cells && cellAt(cells, row, column);
  }

  #firstFailing({ sheet, area }: Region, error: string): Place | undefined {
    for (const [column, failing] of this.#knownOf(sheet).failing) {
      if (column < area.column || column >= area.column + area.columns) continue;
      for (let at = firstFrom(failing, area.row); at < failing.length; at++) {
        const { row, error: own } = failing[at] as Failing[number];
        if (row >= area.row + area.rows) break;
        if (own === error) return { sheet, row, column };
      }
    }
    return undefined;
  }

  /** Gathered once for each sheet: many cells may fail by one, and read many. */
  #knownOf(name: string): Known {
    const key = keyOf(name);
    const before = this.#known.get(key);
    if (before) return before;
    const spills: Spill[] = [];
    const failing = new Map<number, { row: number; error: string }[]>();
    const { cells = {} } = this.#sheets.get(key) ?? {};
    for (const [row, column, { formula, spill, value }] of cellsOf({ cells })) {
      if (formula !== undefined && spill) spills.push({ area: { row, column, ...spill }, formula });
      if (!isError(value)) continue;
      const list = failing.get(column) ?? [];
      list.push({ row, error: value.error });
      failing.set(column, list);
    }
    const known = { spills, failing };
    this.#known.set(key, known);
    return known;
  }
}

/** The cell of a range that goes with one of a spilled answer: a single row or column goes with all. */
function besideOf({ sheet, area }: Region, { down, across }: Filling): Place | undefined {
  const row = area.rows === 1 ? 0 : down;
  const column = area.columns === 1 ? 0 : across;
  if (row >= area.rows || column >= area.columns) return undefined;
  return { sheet, row: area.row + row, column: area.column + column };
}

/** The place in the list of the first one in this row or below. */
function firstFrom(failing: Failing, row: number): number {
  let [low, high] = [0, failing.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((failing[middle] as Failing[number]).row < row) low = middle + 1;
    else high = middle;
  }
  return low;
}
