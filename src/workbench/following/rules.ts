/** What may be typed into cells, and how they look when, kept at these cells. */
import type { Area } from "../../workbook/book";
import { shiftedFormula } from "../../workbook/formula/shared";
import type { NameOf } from "./charts";
import { type Followed, type Follower, isGone } from "./follower";
import { type FormulaNow, followFormula, type Home } from "./formulas";

export interface OnSheet<T> {
  readonly sheetId: string;
  /** Undefined where cells that it names are gone. */
  readonly rule: T | undefined;
}

/** One for each area in which its cells now are; none once these are gone. */
export type RuleNow<T> = (nameOf: NameOf) => readonly OnSheet<T>[];

/** With those of its texts that are formulas, by their keys. */
export function followRule<Rule extends { readonly area: Area }>(
  follower: Follower,
  sheetId: string,
  rule: Rule,
  formulas: Readonly<Record<string, string | undefined>>,
  idOf: (sheet: string) => string,
): RuleNow<Rule> {
  const parts = follower.followParts(sheetId, rule.area);
  const first = () => parts()[0] as Followed;
  const home: Home = { sheetId, area: rule.area, now: first };
  const followed: (readonly [string, FormulaNow])[] = Object.entries(formulas).flatMap(
    ([key, formula]) =>
      formula === undefined ? [] : [[key, followFormula(follower, home, formula, idOf)] as const],
  );
  return (nameOf) => {
    const left = parts().filter((part) => !isGone(part) && nameOf(part.sheetId) !== undefined);
    if (left.length === 0) return [];
    const read = followed.map(([key, formula]) => [key, formula(nameOf)] as const);
    const from = first().area;
    return left.map(({ sheetId, area }) => {
      const shifted = read.map(([key, formula]) => [
        key,
        formula && shiftedFormula(formula)(area.row - from.row, area.column - from.column),
      ]);
      const whole = read.every(([, formula]) => formula !== undefined);
      return {
        sheetId,
        rule: whole ? { ...rule, ...Object.fromEntries(shifted), area } : undefined,
      };
    });
  };
}
