/** How the rules of a sheet changed since its file was read: what each of its elements has to say. */
import { areaAddress } from "../address";
import type { Area, Sheet } from "../book";
import { referencesOf } from "../formula/references";
import { shiftedFormula } from "../formula/shared";
import type { ConditionalFormat, EntryRule, InFile } from "../sheet-rules";

export type Rules = Pick<Sheet, "entryRules" | "formats">;
type Rule = EntryRule | ConditionalFormat;

/** One rule over some areas. */
export interface RulePiece {
  readonly areas: readonly string[];
  /** What its formulas name in place of what they named; undefined where that is the same. */
  readonly references?: readonly string[];
}

/** Of the elements of one kind. */
export interface ElementChanges {
  /** The numbers of those that are understood. */
  readonly read: ReadonlySet<number>;
  /** By the number of the element: the rules that it becomes. */
  readonly pieces: ReadonlyMap<number, readonly RulePiece[]>;
  /** By the area that a rule had: the areas that it has, blank if none. Rules that are not understood go along. */
  readonly areas: ReadonlyMap<string, string>;
}

export type RuleElement = "dataValidation" | "cfRule";
export type RuleChanges = ReadonlyMap<RuleElement, ElementChanges>;

const kinds = [
  { element: "dataValidation", of: ({ entryRules }: Rules) => entryRules },
  { element: "cfRule", of: ({ formats }: Rules) => formats },
] as const;

const keyOf = ({ sheet, index }: InFile) => `${index} ${sheet}`;

export interface SheetRuleChanges {
  /** What the elements that the sheet had say now. */
  readonly changes: RuleChanges;
  /** Rules of other sheets of the file whose cells are now on this one. */
  readonly arrived: Rules;
}

export function ruleChanges(before: Rules, now: Rules): SheetRuleChanges {
  const changes = kinds.map(({ element, of }) => {
    const [old, fresh] = [byElement(of(before)), byElement(of(now))];
    const pieces = new Map<number, readonly RulePiece[]>();
    const areas = new Map<string, string>();
    for (const [key, rules] of old) {
      const its = fresh.get(key) ?? [];
      const [first] = rules;
      if (!first?.inFile || JSON.stringify(rules) === JSON.stringify(its)) continue;
      const becomes = piecesOf(first, its);
      pieces.set(first.inFile.index, becomes);
      if (rules.length === 1)
        areas.set(areaAddress(first.area), becomes.flatMap((piece) => piece.areas).join(" "));
    }
    const read = new Set((of(before) ?? []).flatMap(({ inFile }) => inFile?.index ?? []));
    return [element, { read, pieces, areas }] as const;
  });
  const arrived = {
    entryRules: arrivedIn(before.entryRules, now.entryRules),
    formats: arrivedIn(before.formats, now.formats),
  };
  return { changes: new Map(changes), arrived };
}

function arrivedIn<Its extends Rule>(before: readonly Its[] = [], now: readonly Its[] = []): Its[] {
  const old = byElement(before);
  return now.filter(({ inFile }) => inFile && !old.has(keyOf(inFile)));
}

function byElement(rules: readonly Rule[] = []): Map<string, Rule[]> {
  const groups = new Map<string, Rule[]>();
  for (const rule of rules) {
    if (!rule.inFile) continue;
    const key = keyOf(rule.inFile);
    groups.set(key, [...(groups.get(key) ?? []), rule]);
  }
  return groups;
}

const formulasOf = (rule: Rule): string[] =>
  ("blank" in rule ? [rule.from, rule.to] : [rule.formula]).filter(
    (formula) => formula !== undefined,
  );

const namedBy = (rule: Rule): string[] => formulasOf(rule).flatMap(referencesOf);

/** One for all areas whose formulas say the same of their cells. */
function piecesOf(before: Rule, now: readonly Rule[]): RulePiece[] {
  const alike = new Map<string, Rule[]>();
  for (const rule of [...now].sort((one, other) => inOrder(one.area, other.area))) {
    const { row, column } = rule.area;
    const key = JSON.stringify(
      formulasOf(rule).map((formula) => shiftedFormula(formula)(-row, -column)),
    );
    alike.set(key, [...(alike.get(key) ?? []), rule]);
  }
  const named = namedBy(before).join();
  return [...alike.values()].map((rules) => {
    const references = namedBy(rules[0] as Rule);
    return {
      areas: rules.map(({ area }) => areaAddress(area)),
      ...(references.join() !== named && { references }),
    };
  });
}

/** From the top, then from the left: formulas are written for the first cell of the first area. */
const inOrder = (one: Area, other: Area) => one.row - other.row || one.column - other.column;
