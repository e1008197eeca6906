/** The rules of a sheet, from its file or from its plan, in one form. */
import type { Sheet } from "../workbook/book";
import { ruleLooks } from "../workbook/layout/looks";
import type { PlannedSheet, Validation } from "../workbook/layout/planned";
import type { Comparison, ConditionalFormat, EntryRule } from "../workbook/sheet-rules";
import { ruleFormula } from "../workbook/write/validation-xml";

type AnySheet = Sheet & Partial<PlannedSheet>;

export const formatsOf = ({ formats = [], rules = [] }: AnySheet): ConditionalFormat[] => [
  ...formats,
  ...rules.map((rule) => ({
    area: rule.area,
    formula: ruleFormula(rule),
    look: ruleLooks[rule.look],
  })),
];

export const entryRulesOf = ({ entryRules = [], validations = [] }: AnySheet): EntryRule[] => [
  ...entryRules,
  ...validations.map(entryRuleOf),
];

function entryRuleOf({ area, type, from, to, prompt, refusal }: Validation): EntryRule {
  return {
    area,
    type,
    ...(type === "list" || type === "custom" ? { from: from ?? "" } : bounds(from, to)),
    blank: true,
    ...(prompt && { prompt: prompt.text }),
    refusal,
  };
}

function bounds(
  from: string | undefined,
  to: string | undefined,
): { comparison?: Comparison; from?: string; to?: string } {
  if (from !== undefined && to !== undefined) return { comparison: "between", from, to };
  if (from !== undefined) return { comparison: "greaterThanOrEqual", from };
  return to === undefined ? {} : { comparison: "lessThanOrEqual", from: to };
}
