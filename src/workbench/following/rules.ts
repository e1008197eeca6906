/** What may be typed into cells, and how they look when, kept at these cells. */
import { without } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { shiftedFormula } from "../../workbook/formula/shared";
import type { NameOf } from "./charts";
import { type Followed, isGone } from "./followed";
import type { Follower } from "./follower";
import { followFormulas } from "./formulas";

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
): RuleNow<Rule> {
  const { area } = rule;
  const { reads, at } = followFormulas({ sheetId, area }, formulas, idOf);
  const parts = follower.followParts({ sheetId, area, bond: "ruled", reads });
  return overParts(parts, (part, nameOf) => {
    const texts = at(part, nameOf);
    return (area) => {
      if (!texts) return undefined;
      const [down, right] = [area.row - part.area.row, area.column - part.area.column];
      const shifted = Object.entries(texts).map(([key, formula]) => {
        return [key, shiftedFormula(formula)(down, right)];
      });
      return { ...rule, ...Object.fromEntries(shifted), area };
    };
  });
}

/** What stands over the parts of an area, as long as there are cells in them. */
export function overParts<T>(
  parts: () => readonly Followed[],
  overPart: (part: Followed, nameOf: NameOf) => (area: Area) => T | undefined,
): RuleNow<T> {
  return (nameOf) =>
    parts()
      .filter((part) => !isGone(part) && nameOf(part.sheetId) !== undefined)
      .map((part) => {
        const over = overPart(part, nameOf);
        return { ...part, rule: over(part.area), over };
      });
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
