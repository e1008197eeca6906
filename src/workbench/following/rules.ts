/** What may be typed into cells, and how they look when, kept at these cells. */
import type { Area } from "../../workbook/book";
import type { Rule, Validation } from "../../workbook/layout/planned";
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

type Formulas = Readonly<Record<string, string | undefined>>;

export function followValidation(
  follower: Follower,
  sheetId: string,
  validation: Validation,
  idOf: (sheet: string) => string,
): RuleNow<Validation> {
  const { from, to, ...kept } = validation;
  return followRule(follower, sheetId, validation.area, { from, to }, idOf, (formulas, area) => ({
    ...kept,
    ...formulas,
    area,
  }));
}

export function followFormat(
  follower: Follower,
  sheetId: string,
  rule: Rule,
  idOf: (sheet: string) => string,
): RuleNow<Rule> {
  const { test, look } = rule;
  const formulas = test === "error" ? {} : (test as Formulas);
  return followRule(follower, sheetId, rule.area, formulas, idOf, (now, area) => ({
    look,
    area,
    test: test === "error" ? test : (now as unknown as Exclude<Rule["test"], "error">),
  }));
}

function followRule<T>(
  follower: Follower,
  sheetId: string,
  area: Area,
  formulas: Formulas,
  idOf: (sheet: string) => string,
  ruleOf: (formulas: Readonly<Record<string, string>>, area: Area) => T,
): RuleNow<T> {
  const now = follower.follow(sheetId, area);
  const home: Home = { sheetId, area, now };
  const followed: (readonly [string, FormulaNow])[] = Object.entries(formulas).flatMap(
    ([key, formula]) =>
      formula === undefined ? [] : [[key, followFormula(follower, home, formula, idOf)] as const],
  );
  return (nameOf) => {
    const { sheetId, area } = now();
    if (isGone(now()) || nameOf(sheetId) === undefined) return undefined;
    const read = followed.map(([key, formula]) => [key, formula(nameOf)] as const);
    const whole = read.every(([, formula]) => formula !== undefined);
    const rule = whole
      ? ruleOf(Object.fromEntries(read) as Record<string, string>, area)
      : undefined;
    return { sheetId, rule };
  };
}
