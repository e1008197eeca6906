/** What may be typed into cells, and how they look when, kept at these cells. */
import type { Area } from "../../workbook/book";
import type { NameOf } from "./charts";
import { type Followed, isGone, type RuleKind } from "./followed";
import type { Follower } from "./follower";
import { followFormulas } from "./formulas";

export interface OnSheet<T> extends Followed {
  /** Undefined where cells that it names are gone. */
  readonly rule: T | undefined;
}

/** One for each area in which its cells now are; none once these are gone. */
export type RuleNow<T> = (nameOf: NameOf) => readonly OnSheet<T>[];

/** With those of its texts that are formulas, by their keys. */
export function followRule<Rule extends { readonly area: Area }>(
  follower: Follower,
  kind: RuleKind,
  sheetId: string,
  rule: Rule,
  formulas: Readonly<Record<string, string | undefined>>,
  idOf: (sheet: string) => string,
): RuleNow<Rule> {
  const { area } = rule;
  const { reads, at } = followFormulas({ sheetId, area }, formulas, idOf);
  const parts = follower.followParts({ sheetId, area, bond: "ruled", kind, reads });
  return overParts(parts, (part, nameOf) => {
    const texts = at(part, nameOf);
    return texts && { ...rule, ...texts, area: part.area };
  });
}

/** What stands over the parts of an area, as long as there are cells in them. */
export function overParts<T>(
  parts: () => readonly Followed[],
  overPart: (part: Followed, nameOf: NameOf) => T | undefined,
): RuleNow<T> {
  return (nameOf) =>
    parts()
      .filter((part) => !isGone(part) && nameOf(part.sheetId) !== undefined)
      .map((part) => ({ ...part, rule: overPart(part, nameOf) }));
}
