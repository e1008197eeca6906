import { impossible } from "../refusal";
import { ELEMENTS } from "./elements";

/** Atoms of each element in a formula unit, by symbol. */
export type Composition = ReadonlyMap<string, number>;

/**
 * Reads a chemical formula: element symbols, counts (whole or decimal, as subscripts too), nested
 * brackets of three kinds, and hydrates or adducts joined by "·" or "*", or by a point before nH2O.
 * Elsewhere a point between digits is a decimal point: C6.7H10.7O5.7Na0.7.
 *
 * Method: one pass with a stack of open brackets. What cannot be read is refused with its position,
 * counted from 1. Charges are refused: oxygen demand belongs to a neutral substance.
 */
export function readFormula(formula: string): Composition {
  return new FormulaReader(formula).read();
}

/** Molar mass of a formula unit, g/mol. */
export function molarMass(composition: Composition): number {
  let mass = 0;
  for (const [symbol, count] of composition) mass += (ELEMENTS.get(symbol)?.mass ?? NaN) * count;
  return mass;
}

const CLOSING: Readonly<Record<string, string>> = { "(": ")", "[": "]", "{": "}" };
const SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉";
const LARGEST_COUNT = 1e6;
const DECIMAL = /^\d+(?:\.\d+)?/;

/** What may follow a digit when its point joins water, not decimals: CuSO4.5H2O, CaSO4.0.5H2O. */
const HYDRATE = /^\.\s*(?:\d+(?:\.\d+)?)?\s*H2O\s*(?:$|[)\]}·⋅•*])/;

const COUNT_ADVICE = `Give counts above 0 and up to ${LARGEST_COUNT}.`;
const BRACKET_ADVICE = "Close each bracket with its own kind.";
const PART_ADVICE = "Give element symbols there, e.g. C6H10O5 or CuSO4*5H2O.";
const CHARGE_ADVICE = "Give the neutral substance, with its counter-ion.";
const SIGN_ADVICE =
  "Give element symbols with a capital letter, counts, brackets, and * before water.";
const KNOWN_ELEMENTS = `Known are ${[...ELEMENTS.keys()].join(", ")}.`;

/** One open bracket, or the whole formula. */
class Level {
  readonly finished = new Map<string, number>();
  /** The part between separators that is being read, and how many times it counts. */
  part = new Map<string, number>();
  times = 1;

  constructor(
    readonly bracket: string,
    readonly position: number,
  ) {}

  add(symbol: string, count: number): void {
    this.part.set(symbol, (this.part.get(symbol) ?? 0) + count);
  }

  finishPart(): void {
    for (const [symbol, count] of this.part) {
      this.finished.set(symbol, (this.finished.get(symbol) ?? 0) + count * this.times);
    }
    this.part = new Map();
    this.times = 1;
  }
}

class FormulaReader {
  private readonly text: string;
  private level = new Level("", 0);
  private readonly outside: Level[] = [];
  private at = 0;

  constructor(private readonly formula: string) {
    this.text = formula.replace(/[₀-₉]/g, (digit) => String(SUBSCRIPTS.indexOf(digit)));
  }

  read(): Composition {
    while (this.at < this.text.length) this.readNext(this.text[this.at] as string);
    if (this.outside.length > 0) {
      const { bracket, position } = this.level;
      this.refuse(`the bracket ${bracket} at position ${position} left open`, BRACKET_ADVICE);
    }
    if (this.level.part.size === 0) this.refuse("nothing at its end", PART_ADVICE);
    this.level.finishPart();
    return this.level.finished;
  }

  private readNext(sign: string): void {
    if (/[A-Z]/.test(sign)) this.readElement();
    else if (sign in CLOSING) this.openBracket(sign);
    else if (/[)\]}]/.test(sign)) this.closeBracket(sign);
    else if (/[·⋅•*.]/.test(sign)) this.startPart();
    else if (/\s/.test(sign)) this.at += 1;
    else if (/[+^⁺⁻−-]/.test(sign)) this.refuse(`a charge at ${this.position}`, CHARGE_ADVICE);
    else this.refuse(`"${sign}" at ${this.position}`, SIGN_ADVICE);
  }

  private readElement(): void {
    const symbol = this.match(/^[A-Z][a-z]*/) as string;
    if (!ELEMENTS.has(symbol)) {
      this.refuse(`the unknown element ${symbol} at ${this.position}`, KNOWN_ELEMENTS);
    }
    this.at += symbol.length;
    this.level.add(symbol, this.readCount());
  }

  private openBracket(bracket: string): void {
    this.at += 1;
    this.outside.push(this.level);
    this.level = new Level(bracket, this.at);
  }

  private closeBracket(bracket: string): void {
    const group = this.level;
    const outer = this.outside.pop();
    if (outer === undefined || CLOSING[group.bracket] !== bracket) {
      this.refuse(`the bracket ${bracket} at ${this.position}, which closes none`, BRACKET_ADVICE);
    }
    if (group.part.size === 0) this.refuse(`nothing before ${this.position}`, PART_ADVICE);
    group.finishPart();
    this.at += 1;
    const times = this.readCount();
    for (const [symbol, count] of group.finished) outer.add(symbol, count * times);
    this.level = outer;
  }

  private startPart(): void {
    if (this.level.part.size === 0) this.refuse(`nothing before ${this.position}`, PART_ADVICE);
    this.level.finishPart();
    this.at += 1;
    this.at += (this.match(/^\s*/) as string).length;
    this.level.times = this.countOf(this.match(DECIMAL));
  }

  /** The count behind an element or a bracket, or 1. Before water a point joins; else it is decimal. */
  private readCount(): number {
    const whole = this.match(/^\d+/) ?? "";
    const pointJoins = HYDRATE.test(this.text.slice(this.at + whole.length));
    return this.countOf(pointJoins ? whole : this.match(DECIMAL));
  }

  private countOf(digits: string | undefined): number {
    if (digits === undefined || digits === "") return 1;
    const count = Number(digits);
    if (!(count > 0 && count <= LARGEST_COUNT)) {
      this.refuse(`the count ${digits} at ${this.position}`, COUNT_ADVICE);
    }
    this.at += digits.length;
    return count;
  }

  private match(pattern: RegExp): string | undefined {
    return pattern.exec(this.text.slice(this.at))?.[0];
  }

  private get position(): string {
    return `position ${this.at + 1}`;
  }

  private refuse(what: string, advice: string): never {
    return impossible(`The formula "${this.formula}" has ${what}. ${advice}`);
  }
}
