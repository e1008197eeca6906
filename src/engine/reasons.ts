/**
 * Why a cell shows an error: what the function in it said, or else which cell the error came from and what
 * was said there. It is found when somebody asks, so that a calculation costs nothing more.
 */
import { shorten } from "../cells/shorten";
import { addressOf, sheetPrefix } from "../workbook/address";
import type { Book } from "../workbook/book";
import { operandsOf, withoutCatching } from "../workbook/formula/operands";
import type { EngineFormula } from "./executor";
import type { Failures } from "./failures";
import { numberOf } from "./natives/coercion";
import { type Filling, Precedents, type ReadCell } from "./precedents";
import type { Place } from "./structured";

/** The cell in which an error arose, and what is said of it there. */
export interface Root {
  readonly place: Place;
  readonly words: string | undefined;
}

/** How a cell of a sheet speaks of the one from which its error came. */
export function fromCell({ place, words }: Root, sheet: string): string {
  const origin = seenFrom(sheet, place);
  return words ? `From ${origin}: ${words}` : `The error comes from ${origin}.`;
}

const seenFrom = (home: string, { sheet, row, column }: Place) =>
  `${sheet === home ? "" : sheetPrefix(sheet)}${addressOf(row, column)}`;

const keyOf = ({ sheet, row, column }: Place) => `${sheet}!${row},${column}`;

export class Reasons {
  readonly #roots = new Map<string, Root>();
  readonly #precedents: Precedents;

  constructor(
    private readonly formula: EngineFormula,
    /** With its computed values. */
    book: Book,
    private readonly failures: Pick<Failures, "find">,
    private readonly sheetIdOf: (sheet: string) => string,
  ) {
    this.#precedents = new Precedents(book);
  }

  /** Undefined where nothing is known but the error itself. */
  of(place: Place, error: string): string | undefined {
    const root = this.#rootOf(place, error);
    return keyOf(root.place) === keyOf(place) ? root.words : fromCell(root, place.sheet);
  }

  /** Goes from cell to cell until one knows more than that it reads another: thousands may stand in a row. */
  #rootOf(start: Place, error: string): Root {
    const passed = new Set<string>();
    let place = start;
    let root = this.#roots.get(keyOf(place));
    while (!root) {
      passed.add(keyOf(place));
      const step = this.#stepFrom(place, error);
      if ("words" in step) root = step;
      else {
        place = step;
        root = passed.has(keyOf(place))
          ? { place, words: undefined }
          : this.#roots.get(keyOf(place));
      }
    }
    for (const key of passed) this.#roots.set(key, root);
    return root;
  }

  /** The cell from which the error came, or that it arose here. */
  #stepFrom(place: Place, error: string): Place | Root {
    const filling = this.#precedents.formulaAt(place);
    if (!filling) return { place, words: undefined };
    const cell = { ...filling.place, sheetId: this.sheetIdOf(place.sheet) };
    const known = this.failures.find(cell, error, filling.down, filling.across);
    if (known?.from) return known.from;
    if (known?.message !== undefined) return { place, words: known.message };
    const open = withoutCatching(filling.text);
    const from = this.#precedents.failingIn(filling, open, error);
    if (from) return from;
    const words = this.#faultIn(filling, open, error);
    const caught = words ? undefined : this.#precedents.failingIn(filling, filling.text, error);
    return caught ?? { place, words };
  }

  /** Of a native formula: a text where a number belongs, a zero or a blank by which it divides. */
  #faultIn(filling: Filling, part: string, error: string): string | undefined {
    for (const { before, after, text } of operandsOf(part)) {
      const isTerm = error === "#VALUE!" && [before, after].some((sign) => arithmetic.has(sign));
      const isDivisor = error === "#DIV/0!" && before === "/" && !binding.has(after);
      if (!isTerm && !isDivisor) continue;
      for (const cell of this.#precedents.cellsIn(filling, text)) {
        const fault = isTerm ? this.#textIn(cell) : zeroIn(cell);
        if (fault) return `${seenFrom(filling.place.sheet, cell.place)} is ${fault}`;
      }
    }
    return undefined;
  }

  #textIn({ value }: ReadCell): string | undefined {
    if (typeof value !== "string") return undefined;
    const { StringValueObject } = this.formula;
    if (!numberOf(this.formula, StringValueObject.create(value)).isError()) return undefined;
    return `${value === "" ? "an empty text" : `the text "${shorten(value)}"`}. Give a number.`;
  }
}

const arithmetic: ReadonlySet<string> = new Set(["+", "-", "*", "/", "^", "%"]);

/** Signs that come before a division: A1/B1^0 does not divide by B1. */
const binding: ReadonlySet<string> = new Set(["^", "%"]);

function zeroIn({ value }: ReadCell): string | undefined {
  if (value !== 0 && value !== null) return undefined;
  const what = value === null ? "blank" : "0";
  return `${what}, and the formula divides by it. Give a number other than 0.`;
}
