import type { Vector } from "../../model/vectors";
import type { Term } from "../expression";
import type { Part } from "../picture";
import { type Line, line, numbered } from "../step";

/** The functions know components by their place only. */
export const component = (i: number) => numbered("component", i);
export const DISSOLVED = "dissolved";

export const at = (vector: Vector, i: number) => vector[i] as number;

/** One line for each component. */
export function eachComponent(
  count: number,
  unit: string,
  term: (i: number) => Term,
): readonly Line[] {
  return Array.from({ length: count }, (_, i) => line(component(i), term(i), unit));
}

/** Numbers that stand for the components, and last for what is dissolved, as the functions answer them. */
export function namedParts(values: readonly number[]): readonly Part[] {
  return values.map((value, i) => ({
    label: i === values.length - 1 ? DISSOLVED : component(i),
    value,
  }));
}

export const partsOf = (lines: readonly Line[]): readonly Part[] =>
  lines.map(({ label, value }) => ({ label, value: Number(value) }));
