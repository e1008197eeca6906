import type { Term } from "../expression";
import { amount, type Part, percent } from "../picture";
import { listed } from "../sentence";
import { type Line, line, numbered } from "../step";

/** The functions know components by their place only. */
export const component = (i: number) => numbered("component", i);
export const DISSOLVED = "dissolved";

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

/** Where a dose is in the end: "component 1 holds 5.2 kg/t, component 2 1.1 kg/t; 0.2 kg/t stay dissolved". */
export function whereItIs(parts: readonly Part[]): string {
  const held = parts.slice(0, -1);
  const dissolved = (parts.at(-1) as Part).value;
  const whole = parts.reduce((sum, { value }) => sum + value, 0);
  const share = whole > 0 ? `, ${percent(dissolved / whole)} of the dose` : "";
  const holding = listed(
    held,
    ({ label, value }, i) => `${label}${i === 0 ? " holds" : ""} ${amount(value, "kg/t")}`,
  );
  return `${holding}; ${amount(dissolved, "kg/t")} stay dissolved${share}.`;
}
