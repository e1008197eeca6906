/** What makes rules of the grid stand where their cells now are, on whichever sheet, and what takes that back. */
import { generateRandomId, type IRange, type ISheetDataValidationRule } from "@univerjs/core";
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
  SetConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import { areaOf, rangeOf } from "../../engine/ranges";
import type { Step } from "../grid/one-step";
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

/** What is left of a rule on its sheet comes first, under its own name. */
function shared(subUnitId: string, now: readonly RuleInGrid[]) {
  const there = now.filter(({ areas }) => areas.length > 0);
  const own = there.find(({ sheetId }) => sheetId === subUnitId);
  return { own, others: there.filter((one) => one !== own) };
}

export function entryRuleSteps(
  place: OnSheet,
  rule: ISheetDataValidationRule,
  now: readonly RuleInGrid[],
): Step[] {
  const before = structuredClone(rule);
  if (isSame(place, rule.ranges, [rule.formula1 ?? "", rule.formula2 ?? ""], now)) return [];
  const as = ({ areas, formulas: [formula1, formula2] }: RuleInGrid) => ({
    ...before,
    ranges: areas.map(rangeOf),
    ...(before.formula1 !== undefined && { formula1 }),
    ...(before.formula2 !== undefined && { formula2 }),
  });
  const add = (on: OnSheet, its: ISheetDataValidationRule) => {
    return { id: AddDataValidationMutation.id, params: { ...on, rule: its, source: "patched" } };
  };
  const remove = (on: OnSheet, ruleId: string) => {
    return { id: RemoveDataValidationMutation.id, params: { ...on, ruleId, source: "patched" } };
  };
  const update = (payload: ISheetDataValidationRule) => ({
    id: UpdateDataValidationMutation.id,
    params: {
      ...place,
      ruleId: rule.uid,
      payload: { type: UpdateRuleType.ALL, payload },
      source: "patched",
    },
  });
  const { own, others } = shared(place.subUnitId, now);
  return [
    own
      ? { todo: update(as(own)), undo: update(before) }
      : { todo: remove(place, rule.uid), undo: add(place, before) },
    ...others.map((one) => {
      const [on, uid] = [{ ...place, subUnitId: one.sheetId }, generateRandomId()];
      return { todo: add(on, { ...as(one), uid }), undo: remove(on, uid) };
    }),
  ];
}

export function formatSteps(
  place: OnSheet,
  rule: IConditionFormattingRule,
  now: readonly RuleInGrid[],
): Step[] {
  if (isSame(place, rule.ranges, formulasOf(rule), now)) return [];
  const before = structuredClone(rule);
  const as = ({ areas, formulas }: RuleInGrid) => {
    return { ...withFormulas(before, formulas), ranges: areas.map(rangeOf) };
  };
  const add = (on: OnSheet, its: IConditionFormattingRule) => {
    return { id: AddConditionalRuleMutation.id, params: { ...on, rule: its } };
  };
  const remove = (on: OnSheet, cfId: string) => {
    return { id: DeleteConditionalRuleMutation.id, params: { ...on, cfId } };
  };
  const set = (its: IConditionFormattingRule) => {
    return { id: SetConditionalRuleMutation.id, params: { ...place, cfId: rule.cfId, rule: its } };
  };
  const { own, others } = shared(place.subUnitId, now);
  return [
    own
      ? { todo: set(as(own)), undo: set(before) }
      : { todo: remove(place, rule.cfId), undo: add(place, before) },
    ...others.map((one) => {
      const [on, cfId] = [{ ...place, subUnitId: one.sheetId }, createCfId()];
      return { todo: add(on, { ...as(one), cfId }), undo: remove(on, cfId) };
    }),
  ];
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

function withFormulas(format: IConditionFormattingRule, formulas: readonly string[]) {
  const left = [...formulas];
  const text = JSON.stringify(format.rule, (key, value) =>
    isFormula(key, value) ? left.shift() : value,
  );
  return { ...format, rule: JSON.parse(text) as IConditionFormattingRule["rule"] };
}
