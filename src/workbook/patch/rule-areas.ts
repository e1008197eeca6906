/** Rules of a sheet whose cells stand elsewhere, or are more, since its file was read. */
import { areaAddress } from "../address";
import type { Area, Sheet } from "../book";
import { shiftedFormula } from "../formula/shared";
import { areaIfAny } from "../read/place";
import type { ConditionalFormat, EntryRule } from "../sheet-rules";
import { readXml } from "../xml";
import { type Replacement, splice } from "./splice";

/** By the elements that hold a rule, and the area that it had: the one that it has. */
export type RuleMoves = ReadonlyMap<string, ReadonlyMap<string, string>>;

type Rules = Pick<Sheet, "entryRules" | "formats">;

const kinds = [
  { words: "entry rules", element: "dataValidation", of: ({ entryRules }: Rules) => entryRules },
  {
    words: "conditional formats",
    element: "conditionalFormatting",
    of: (its: Rules) => its.formats,
  },
] as const;

/** How the areas of rules changed, and the kinds of which another area alone does not tell what changed. */
export function ruleMoves(before: Rules, now: Rules): { moves: RuleMoves; left: string[] } {
  const found = kinds.map(({ words, element, of }) => {
    const areas = movedAreas(of(before) ?? [], of(now) ?? []);
    return { words, element, areas };
  });
  const moved = found.flatMap(({ element, areas }) =>
    areas && areas.size > 0 ? [[element, areas] as const] : [],
  );
  return {
    moves: new Map(moved),
    left: found.flatMap(({ words, areas }) => (areas ? [] : [words])),
  };
}

type Rule = EntryRule | ConditionalFormat;

function movedAreas(
  before: readonly Rule[],
  now: readonly Rule[],
): Map<string, string> | undefined {
  if (before.length !== now.length) return undefined;
  const areas = new Map<string, string>();
  for (const [index, old] of before.entries()) {
    const rule = now[index] as Rule;
    const [from, to] = [areaAddress(old.area), areaAddress(rule.area)];
    const isSame = JSON.stringify({ ...old, area: to }) === JSON.stringify({ ...rule, area: to });
    if (!isSame || (!sameCorner(old.area, rule.area) && isRelative(old))) return undefined;
    if ((areas.get(from) ?? to) !== to) return undefined;
    areas.set(from, to);
  }
  return new Map([...areas].filter(([from, to]) => from !== to));
}

const sameCorner = (one: Area, other: Area) => one.row === other.row && one.column === other.column;

/** Whether a formula of the rule, written for the corner of its area, names cells by their distance from there. */
const isRelative = (rule: Rule): boolean =>
  ("blank" in rule ? [rule.from, rule.to] : [rule.formula]).some(
    (formula) => formula !== undefined && shiftedFormula(formula)(1, 1) !== formula,
  );

/** The sheet's XML with its rules, also those that are not understood, over the areas that they now have. */
export function patchRuleAreas(path: string, xml: string, moves: RuleMoves): string {
  const replacements: Replacement[] = [];
  let areas: ReadonlyMap<string, string> | undefined;
  let inner: number | undefined;
  const replaceIn = (start: number, end: number, places: string) => {
    const now = places.split(/\s+/).map((place) => areas?.get(addressIn(place)) ?? place);
    const text = xml.slice(start, end).replace(places, now.join(" "));
    replacements.push({ start, end, text });
  };
  readXml(path, xml, {
    open({ name, attributes, start, innerStart }) {
      areas = moves.get(name) ?? areas;
      if (moves.has(name) && attributes.sqref) replaceIn(start, innerStart, attributes.sqref);
      // An extension names the cells of its rule in an element.
      if (name === "sqref" && areas) inner = innerStart;
    },
    close(name, _end, innerEnd) {
      if (inner !== undefined) replaceIn(inner, innerEnd, xml.slice(inner, innerEnd));
      inner = undefined;
      if (moves.has(name)) areas = undefined;
    },
  });
  return splice(xml, replacements);
}

/** As rules are kept by it; a place that is none is left as it is. */
function addressIn(place: string): string {
  const area = areaIfAny(place);
  return area ? areaAddress(area) : place;
}
