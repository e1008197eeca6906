import { type Expression, expression, type Term } from "./expression";
import type { Picture } from "./picture";

/** How one answer came about, in steps; the last step is the answer. */
export interface Working {
  readonly steps: readonly Step[];
  /** The answer in a sentence, where it is more than one number. */
  readonly says?: string;
  readonly picture?: Picture;
  /** What to keep in mind with these very numbers. */
  readonly remarks?: readonly string[];
}

export type Step = Lines | Table;

/** Numbers that are found in one step, each by its own line. */
export interface Lines {
  readonly kind: "lines";
  readonly what: string;
  readonly lines: readonly Line[];
}

export interface Line {
  /** Whose number it is; "" where a step finds one number only. */
  readonly label: string;
  /** The equation with the numbers put in; undefined where the number is found otherwise, as `what` says. */
  readonly tex: string | undefined;
  readonly value: Value;
  readonly unit: string;
}

/** Numbers that are best read as a table. */
export interface Table {
  readonly kind: "table";
  readonly what: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Value[])[];
}

export type Value = number | string | boolean;

/** A step that finds one number by an equation. */
export function step(what: string, term: Term, unit: string): Lines {
  return { kind: "lines", what, lines: [line("", term, unit)] };
}

/** A step that finds a number without an equation to show: by the method that `what` names. */
export function found(what: string, value: Value, unit: string): Lines {
  return { kind: "lines", what, lines: [{ label: "", tex: undefined, value, unit }] };
}

/** A step that finds a number for each item. */
export function each(what: string, lines: readonly Line[]): Lines {
  return { kind: "lines", what, lines };
}

export function line(label: string, term: Term, unit: string): Line {
  const { tex, value }: Expression = expression(term);
  return { label, tex: typeof term === "number" ? undefined : tex, value, unit };
}

/** The items of a list where nothing names them: component 1, component 2… */
export const numbered = (what: string, i: number) => `${what} ${i + 1}`;
