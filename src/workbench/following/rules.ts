/** What may be typed into cells, and how they look when, kept at these cells. */
import type { Area } from "../../workbook/book";
import type { NameOf } from "./charts";
import { type Follower, isGone } from "./follower";
import { type FormulaNow, followFormula, type Home } from "./formulas";

export interface OnSheet<T> {
  readonly sheetId: string;
  /** Undefined where cells that it names are gone. */
  readonly rule: T | undefined;
}

/** Undefined once its own cells are gone. */
export type RuleNow<T> = (nameOf: NameOf) => OnSheet<T> | undefined;

/** With those of its texts that are formulas, by their keys. */
export function followRule<Rule extends { readonly area: Area }>(
  follower: Follower,
  sheetId: string,
  rule: Rule,
  formulas: Readonly<Record<string, string | undefined>>,
  idOf: (sheet: string) => string,
): RuleNow<Rule> {
  const now = follower.follow(sheetId, rule.area);
  const home: Home = { sheetId, area: rule.area, now };
  const followed: (readonly [string, FormulaNow])[] = Object.entries(formulas).flatMap(
    ([key, formula]) =>
      formula === undefined ? [] : [[key, followFormula(follower, home, formula, idOf)] as const],
  );
  return (nameOf) => {
    const { sheetId, area } = now();
    if (isGone(now()) || nameOf(sheetId) === undefined) return undefined;
    const read = followed.map(([key, formula]) => [key, formula(nameOf)] as const);
    const whole = read.every(([, formula]) => formula !== undefined);
    return { sheetId, rule: whole ? { ...rule, ...Object.fromEntries(read), area } : undefined };
  };
}
