import { figure } from "../model/figure";

/** Numbers put into an equation: what is shown (TeX) and what is computed come from one thing. */
export interface Expression {
  readonly value: number;
  readonly tex: string;
  readonly binds: Binding;
}

/** How strongly the outermost sign binds: what binds less than its neighbour needs brackets. */
type Binding = "sum" | "product" | "one";
const STRENGTH: Readonly<Record<Binding, number>> = { sum: 0, product: 1, one: 2 };

export type Term = number | Expression;

/** A number as it stands in an equation. */
export function number(value: number): Expression {
  const [mantissa, exponent] = figure(value).split("e");
  const tex =
    exponent === undefined ? `${mantissa}` : `${mantissa} \\times 10^{${Number(exponent)}}`;
  return { value, tex, binds: value < 0 ? "sum" : exponent === undefined ? "one" : "product" };
}

/** How many terms of a long sum are shown at its start, before the dots and the last one. */
const SHOWN = 3;

export function sum(...terms: readonly Term[]): Expression {
  const given = terms.map(expression);
  const shown = given.map((one, i) => (i === 0 ? one.tex : within(one, "product")));
  const tex =
    shown.length > SHOWN + 2
      ? [...shown.slice(0, SHOWN), "\\cdots", shown.at(-1)].join(" + ")
      : shown.join(" + ");
  const value = given.reduce((total, one) => total + one.value, 0);
  return { value, tex, binds: given.length === 1 ? (given[0] as Expression).binds : "sum" };
}

export function difference(from: Term, ...taken: readonly Term[]): Expression {
  const [first, rest] = [expression(from), taken.map(expression)];
  return {
    value: rest.reduce((left, one) => left - one.value, first.value),
    tex: [first.tex, ...rest.map((one) => within(one, "product"))].join(" - "),
    binds: "sum",
  };
}

export function product(...factors: readonly Term[]): Expression {
  const given = factors.map(expression);
  return {
    value: given.reduce((total, one) => total * one.value, 1),
    tex: given.map((one) => within(one, "product")).join(" \\cdot "),
    binds: given.length === 1 ? (given[0] as Expression).binds : "product",
  };
}

export function quotient(above: Term, below: Term): Expression {
  const [over, under] = [expression(above), expression(below)];
  return { value: over.value / under.value, tex: fraction(over.tex, under.tex), binds: "product" };
}

export function power(base: Term, exponent: Term): Expression {
  const [below, above] = [expression(base), expression(exponent)];
  const value = below.value ** above.value;
  return { value, tex: `${within(below, "one")}^{${above.tex}}`, binds: "product" };
}

/** e to a power. */
export function exponential(exponent: Term): Expression {
  const { value, tex } = expression(exponent);
  return { value: Math.exp(value), tex: `e^{${tex}}`, binds: "product" };
}

export function logarithm(of: Term): Expression {
  const { value, tex } = expression(of);
  return { value: Math.log(value), tex: `\\ln\\left(${tex}\\right)`, binds: "product" };
}

export function squareRoot(of: Term): Expression {
  const { value, tex } = expression(of);
  return { value: Math.sqrt(value), tex: `\\sqrt{${tex}}`, binds: "one" };
}

export function negative(of: Term): Expression {
  const one = expression(of);
  return { value: -one.value, tex: `-${within(one, "product")}`, binds: "sum" };
}

/** An expression as it reads, with the value that the model finds without loss of digits. */
export const valued = (term: Expression, value: number): Expression => ({ ...term, value });

export const expression = (term: Term): Expression =>
  typeof term === "number" ? number(term) : term;

const fraction = (above: string, below: string) => `\\frac{${above}}{${below}}`;

/** The TeX of an expression beside a sign that binds as `least` does. */
function within({ tex, binds }: Expression, least: Binding): string {
  return STRENGTH[binds] >= STRENGTH[least] ? tex : `\\left(${tex}\\right)`;
}
