/** What makes rules of the grid stand where their cells now are, on whichever sheet, and what takes that back. */
import {
  generateRandomId,
  type IMutationInfo,
  type IRange,
  type ISheetDataValidationRule,
} from "@univerjs/core";
import {
  AddDataValidationMutation,
  RemoveDataValidationMutation,
  UpdateDataValidationMutation,
  UpdateRuleType,
} from "@univerjs/data-validation";
import {
  AddConditionalRuleMutation,
  createCfId,
  DeleteConditionalRuleMutation,
  type IConditionFormattingRule,
  MoveConditionalRuleMutation,
  SetConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import { areaOf, rangeOf } from "../../engine/ranges";
import type { Area } from "../../workbook/book";
import { rankingOver } from "../book/grid-rankings";
import type { RuleInGrid } from "./grid-formulas";

/** The mutations that they are made of. */
export const ruleMutations: ReadonlySet<string> = new Set([
  AddConditionalRuleMutation.id,
  SetConditionalRuleMutation.id,
  DeleteConditionalRuleMutation.id,
  AddDataValidationMutation.id,
  UpdateDataValidationMutation.id,
  RemoveDataValidationMutation.id,
]);

export interface RuleStep {
  readonly todo: IMutationInfo;
  readonly undo: readonly IMutationInfo[];
}

export interface OnSheet {
  readonly unitId: string;
  readonly subUnitId: string;
}

const isSame = (
  { subUnitId }: OnSheet,
  ranges: readonly IRange[],
  formulas: readonly string[],
  now: readonly RuleInGrid[],
) => {
  const [only, ...others] = now;
  const areas = JSON.stringify(ranges.map(areaOf));
  return (
    others.length === 0 &&
    only?.sheetId === subUnitId &&
    JSON.stringify(only.areas) === areas &&
    only.formulas.join("\n") === formulas.join("\n")
  );
};

/** What is done with a kind of rules, on any sheet. */
interface Deeds<Rule> {
  /** The rule over other areas, with other formulas. */
  as(now: RuleInGrid): Rule;
  add(on: OnSheet, id: string, rule: Rule): IMutationInfo;
  set(id: string, rule: Rule): IMutationInfo;
  remove(on: OnSheet, id: string): IMutationInfo;
  /** What makes one that is added again stand where it stood among the others. */
  readonly back?: readonly IMutationInfo[];
  freshId(): string;
}

/** What is left of a rule on its sheet keeps its name; what came to others is a rule of its own there. */
function steps<Rule>(
  place: OnSheet,
  id: string,
  before: Rule,
  now: readonly RuleInGrid[],
  { as, add, set, remove, back = [], freshId }: Deeds<Rule>,
): RuleStep[] {
  const there = now.filter(({ areas }) => areas.length > 0);
  const own = there.find(({ sheetId }) => sheetId === place.subUnitId);
  const others = there.filter((one) => one !== own);
  return [
    own
      ? { todo: set(id, as(own)), undo: [set(id, before)] }
      : { todo: remove(place, id), undo: [add(place, id, before), ...back] },
    ...others.map((one) => {
      const [on, fresh] = [{ ...place, subUnitId: one.sheetId }, freshId()];
      return { todo: add(on, fresh, as(one)), undo: [remove(on, fresh)] };
    }),
  ];
}

export function entryRuleSteps(
  place: OnSheet,
  rule: ISheetDataValidationRule,
  now: readonly RuleInGrid[],
): RuleStep[] {
  if (isSame(place, rule.ranges, [rule.formula1 ?? "", rule.formula2 ?? ""], now)) return [];
  const before = structuredClone(rule);
  const source = "patched";
  return steps(place, rule.uid, before, now, {
    as: ({ areas, formulas: [formula1, formula2] }) => ({
      ...before,
      ranges: areas.map(rangeOf),
      ...(before.formula1 !== undefined && { formula1 }),
      ...(before.formula2 !== undefined && { formula2 }),
    }),
    add: (on, uid, its) => ({
      id: AddDataValidationMutation.id,
      params: { ...on, rule: { ...its, uid }, source },
    }),
    set: (ruleId, its) => ({
      id: UpdateDataValidationMutation.id,
      params: { ...place, ruleId, payload: { type: UpdateRuleType.ALL, payload: its }, source },
    }),
    remove: (on, ruleId) => ({
      id: RemoveDataValidationMutation.id,
      params: { ...on, ruleId, source },
    }),
    freshId: generateRandomId,
  });
}

/** The grid adds one before all others: `after` is the one behind which it stands. */
export function formatSteps(
  place: OnSheet,
  rule: IConditionFormattingRule,
  now: readonly RuleInGrid[],
  after: string | undefined,
): RuleStep[] {
  if (isSame(place, rule.ranges, formulasOf(rule), now)) return [];
  const before = structuredClone(rule);
  return steps(place, rule.cfId, before, now, {
    as: ({ areas, formulas }) => ({
      ...before,
      rule: ruleOver(before, areas, formulas),
      ranges: areas.map(rangeOf),
    }),
    add: (on, cfId, its) => ({
      id: AddConditionalRuleMutation.id,
      params: { ...on, rule: { ...its, cfId } },
    }),
    set: (cfId, its) => ({
      id: SetConditionalRuleMutation.id,
      params: { ...place, cfId, rule: its },
    }),
    remove: (on, cfId) => ({ id: DeleteConditionalRuleMutation.id, params: { ...on, cfId } }),
    back:
      after === undefined
        ? []
        : [
            {
              id: MoveConditionalRuleMutation.id,
              params: {
                ...place,
                start: { id: rule.cfId, type: "self" },
                end: { id: after, type: "after" },
              },
            },
          ],
    freshId: createCfId,
  });
}

const isFormula = (key: string, value: unknown): value is string =>
  key === "value" && typeof value === "string" && value.startsWith("=");

/** Its test, or the bounds that are computed. */
export function formulasOf({ rule }: IConditionFormattingRule): string[] {
  const formulas: string[] = [];
  JSON.stringify(rule, (key, value) => {
    if (isFormula(key, value)) formulas.push(value);
    return value;
  });
  return formulas;
}

/** Bars that begin at the least number of their cells begin at that of the cells that they have. */
function ruleOver(
  { rule, ranges }: IConditionFormattingRule,
  areas: readonly Area[],
  formulas: readonly string[],
): IConditionFormattingRule["rule"] {
  const ranked = rankingOver(rule, ranges.map(areaOf), areas);
  if (ranked !== rule) return ranked;
  const left = [...formulas];
  const text = JSON.stringify(rule, (key, value) => (isFormula(key, value) ? left.shift() : value));
  return JSON.parse(text) as IConditionFormattingRule["rule"];
}
