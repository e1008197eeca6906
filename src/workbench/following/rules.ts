/** What may be typed into cells, and how they look when, kept at these cells. */
import { without } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { shiftedFormula } from "../../workbook/formula/shared";
import type { NameOf } from "./charts";
import { type Followed, type Follower, isGone } from "./follower";
import { type FormulaNow, followFormula, type Home } from "./formulas";

export interface OnSheet<T> extends Followed {
  /** Undefined where cells that it names are gone. */
  readonly rule: T | undefined;
  /** The rule for a part of its area. */
  readonly over: (area: Area) => T | undefined;
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
  withRow = false,
): RuleNow<Rule> {
  const parts = follower.followParts(sheetId, rule.area, withRow);
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
    const whole = read.every(([, formula]) => formula !== undefined);
    const over = (area: Area) => {
      const shifted = read.map(([key, formula]) => [
        key,
        formula && shiftedFormula(formula)(area.row - from.row, area.column - from.column),
      ]);
      return whole ? { ...rule, ...Object.fromEntries(shifted), area } : undefined;
    };
    return left.map((part) => ({ ...part, rule: over(part.area), over }));
  };
}

/** What was put over the cells of another rule replaces it there, where a cell may have one rule only. */
export function replaced<T>(rules: readonly OnSheet<T>[]): OnSheet<T>[] {
  const put = rules.filter(({ putBy }) => putBy !== undefined);
  return rules.flatMap((one) => {
    const { sheetId, area, putBy = 0, over } = one;
    const later = put.filter((other) => other.sheetId === sheetId && (other.putBy ?? 0) > putBy);
    const left = later.reduce(
      (areas, { area }) => areas.flatMap((its) => without(its, area)),
      [area],
    );
    if (left.length === 1 && left[0] === area) return [one];
    return left.map((area) => ({ ...one, area, rule: over(area) }));
  });
}
