import type { Engine } from "../../engine/engine";
import { fitted } from "../../engine/fitted";
import { addressOf } from "../../workbook/address";
import { type Book, type Cell, cellAt, type Value } from "../../workbook/book";
import type { FunctionNames } from "../../workbook/formula/stored-form";
import { sameValue } from "../../workbook/patch/edits";
import { type Failure, failuresOf } from "./failures";
import { type FormulaCell, formulaCells } from "./formula-cells";
import { frozenBook } from "./frozen";
import { alike, rootsOf, sameAnswer } from "./judgement";
import { restored } from "./restored";

export interface Recalculated {
  /** What the file is to hold. */
  readonly book: Book;
  /** How many formulas hold one of our functions. */
  readonly ours: number;
  /** Cells of ours that show an error. */
  readonly failures: readonly Failure[];
  /** Native formulas that keep the value of the file, since it is not the one computed here. */
  readonly kept: readonly KeptCell[];
  /** Formulas of ours that give many values but are entered so that they show one. */
  readonly cramped: readonly { readonly sheet: string; readonly address: string }[];
}

export interface KeptCell {
  readonly sheet: string;
  readonly address: string;
  readonly formula: string;
  readonly saved: Value;
  readonly computed: Value;
}

/** Each round settles at least one cell; a chain of differences longer than this is settled at once. */
const mostRounds = 20;

/** Too many differences to look for where each starts. */
const mostToTrace = 2000;

class Recalculation {
  readonly #ours: readonly FormulaCell[];
  readonly #native: readonly FormulaCell[];
  readonly #kept = new Map<string, FormulaCell>();
  readonly #computed = new Map<string, Value>();
  /** Native formulas that differ only because they read a cell of ours that had no value. */
  #unjudged: readonly FormulaCell[] = [];
  /** Formulas of ours that are computed as another: those whose cells take only a part of the answer. */
  readonly #asEntered = new Map<string, string>();

  constructor(
    private readonly original: Book,
    private readonly engine: Engine,
    private readonly names: FunctionNames,
    private readonly all: boolean,
  ) {
    const formulas = formulaCells(original, names);
    this.#ours = formulas.filter(({ ours }) => ours);
    this.#native = formulas.filter(({ ours }) => !ours);
    for (const { key, cell } of this.#ours)
      if (cell.fixed && cell.spill) this.#asEntered.set(key, fitted(cell.formula, cell.spill));
  }

  async run(): Promise<Recalculated> {
    const judged = !this.all && this.#native.length > 0;
    const before = judged ? await this.#judgeNative() : undefined;
    const { book, failures } = await this.#compute();
    const restored = this.#restore(book, before);
    return {
      book: restored,
      ours: this.#ours.length,
      failures: failuresOf(failures, this.original, this.names, this.#spoken()),
      kept: [...this.#kept.values()]
        .filter(({ key }) => this.#computed.has(key))
        .map(
          ({ key, sheet, row, column, cell }): KeptCell => ({
            sheet,
            address: addressOf(row, column),
            formula: cell.formula,
            saved: cell.value,
            computed: this.#computed.get(key) ?? null,
          }),
        ),
      cramped: this.#ours
        .filter(({ key, cell }) => !cell.fixed && this.#asEntered.has(key))
        .map(({ sheet, row, column }) => ({ sheet, address: addressOf(row, column) })),
    };
  }

  /**
   * Computes the native formulas from the values that our cells hold in the file, so that they should
   * give what the file holds. Those that do not are kept. Answers with that book: a native cell has
   * to be written only where it comes out otherwise once our cells are computed anew.
   */
  async #judgeNative(): Promise<Book> {
    for (const cell of this.#native)
      if (cell.fleeting && cell.saved) this.#kept.set(cell.key, cell);
    const saved = this.#ours.filter(({ saved }) => saved);
    for (let round = 0; ; round++) {
      const frozen = [...saved, ...this.#kept.values()];
      const { book } = await this.engine.recalculate(frozenBook(this.original, frozen));
      const differing = this.#native.filter(
        (native) =>
          !this.#kept.has(native.key) &&
          native.saved &&
          !sameAnswer(native, this.original, book, alike),
      );
      const judged = await this.#independentOfUnsaved(differing, book, frozen);
      this.#unjudged = differing.filter((cell) => !judged.includes(cell));
      if (judged.length === 0) return book;
      const trace = round < mostRounds && judged.length <= mostToTrace;
      for (const cell of trace ? rootsOf(judged, this.original) : judged) this.#keep(cell, book);
    }
  }

  /** A cell of ours without a saved value leaves nothing to judge those by that read it. */
  async #independentOfUnsaved(
    differing: readonly FormulaCell[],
    computed: Book,
    frozen: readonly FormulaCell[],
  ): Promise<readonly FormulaCell[]> {
    const unsaved = this.#ours.filter(({ saved }) => !saved);
    if (differing.length === 0 || unsaved.length === 0) return differing;
    const blank = frozenBook(this.original, [...frozen, ...unsaved]);
    const { book } = await this.engine.recalculate(blank);
    return differing.filter((cell) => sameAnswer(cell, computed, book, sameValue));
  }

  #keep(cell: FormulaCell, computed: Book): void {
    const sheet = computed.sheets.find(({ name }) => name === cell.sheet);
    this.#kept.set(cell.key, cell);
    this.#computed.set(cell.key, (sheet && cellAt(sheet, cell.row, cell.column)?.value) ?? null);
  }

  /** Computes everything that is not kept. */
  async #compute() {
    for (let round = 0; ; round++) {
      const frozen = frozenBook(this.original, [...this.#kept.values()], this.#asEntered);
      const result = await this.engine.recalculate(frozen);
      const lacking = this.#lacking(result.book);
      const cramped = this.#cramped(result.book);
      if ((lacking.length === 0 && cramped.length === 0) || round === mostRounds) return result;
      for (const cell of rootsOf(lacking, this.original)) this.#keep(cell, result.book);
      for (const { key, cell } of cramped) this.#asEntered.set(key, `INDEX(${cell.formula},1,1)`);
    }
  }

  /** What stands in the cell, by what was computed instead. */
  #spoken(): ReadonlyMap<string, string> {
    const entered = this.#ours.filter(({ key }) => this.#asEntered.has(key));
    return new Map(
      entered.map(({ key, cell }) => [this.#asEntered.get(key) as string, cell.formula]),
    );
  }

  #valueIn(book: Book, { sheet, row, column }: FormulaCell): Cell | undefined {
    const home = book.sheets.find(({ name }) => name === sheet);
    return home && cellAt(home, row, column);
  }

  /** Native formulas with a function that the engine does not have. */
  #lacking(book: Book): readonly FormulaCell[] {
    const unknown: Value = { error: "#NAME?" };
    return this.#native.filter(
      (native) =>
        !this.#kept.has(native.key) &&
        !sameValue(native.cell.value, unknown) &&
        sameValue(this.#valueIn(book, native)?.value ?? null, unknown),
    );
  }

  /** Formulas of ours that are entered as plain ones, which show the first of the values that they give. */
  #cramped(book: Book): readonly FormulaCell[] {
    return this.#ours.filter((its) => {
      if (its.cell.spill || this.#asEntered.has(its.key)) return false;
      const computed = this.#valueIn(book, its);
      const { rows, columns } = computed?.spill ?? { rows: 1, columns: 1 };
      return rows > 1 || columns > 1 || sameValue(computed?.value ?? null, { error: "#SPILL!" });
    });
  }

  /** The computed book, with everything as the file has it that is not to be written. */
  #restore(computed: Book, before: Book | undefined): Book {
    const isUnchanged = (native: FormulaCell) =>
      this.#kept.has(native.key) ||
      (before !== undefined &&
        native.saved &&
        !this.#unjudged.includes(native) &&
        sameAnswer(native, before, computed, sameValue));
    return restored(this.original, computed, [...this.#ours, ...this.#native], isUnchanged);
  }
}

/**
 * Recalculates a book as its owner expects it: every formula of ours anew, a native one only where
 * it has no value yet or comes out otherwise because of ours (with `all`, every one). A native
 * formula that this engine does not have, or computes to another value than the file holds, keeps
 * its value and is named.
 */
export function recalculate(
  book: Book,
  engine: Engine,
  names: FunctionNames,
  { all = false }: { readonly all?: boolean } = {},
): Promise<Recalculated> {
  return new Recalculation(book, engine, names, all).run();
}
