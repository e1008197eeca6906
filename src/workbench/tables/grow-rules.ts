/** Rules that stand over the whole body of a table go on doing so when it has more rows. */
import type { IMutationInfo, IRange, ISheetDataValidationRule, Worksheet } from "@univerjs/core";
import { UpdateDataValidationMutation, UpdateRuleType } from "@univerjs/data-validation";
import {
  ConditionalFormattingRuleModel,
  type IConditionFormattingRule,
  SetConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { areaOf, rangeOf } from "../../engine/ranges";
import type { Area } from "../../workbook/book";
import { spansBody } from "../../workbook/layout/filled-in";
import { rankingOver } from "../book/grid-rankings";
import type { Grid } from "../grid/grid";
import type { Step } from "../grid/one-step";

function stretched<Rule extends { ranges: IRange[] }>(rule: Rule, body: Area, grown: Area): Rule {
  const { startRow, endRow } = rangeOf(grown);
  const ranges = rule.ranges.map((range) =>
    spansBody(areaOf(range), body) ? { ...range, startRow, endRow } : range,
  );
  return { ...rule, ranges };
}

/** A format over the body of a table, once that has grown. */
export function grownFormat(
  format: IConditionFormattingRule,
  body: Area,
  grown: Area,
): IConditionFormattingRule {
  const now = stretched(format, body, grown);
  const [areas, others] = [format.ranges.map(areaOf), now.ranges.map(areaOf)];
  return { ...now, rule: rankingOver(format.rule, areas, others) };
}

export function growRules(
  { injector }: Grid,
  worksheet: Worksheet,
  body: Area,
  grown: Area,
): Step[] {
  const sheet = { unitId: worksheet.getUnitId(), subUnitId: worksheet.getSheetId() };
  const isBody = (range: IRange) => spansBody(areaOf(range), body);
  const over = <Rule extends { ranges: IRange[] }>(rules: readonly Rule[] | null | undefined) =>
    (rules ?? []).filter(({ ranges }) => ranges.some(isBody));

  const validations = injector.get(SheetDataValidationModel);
  const formats = injector.get(ConditionalFormattingRuleModel);
  const validated = (rule: ISheetDataValidationRule): IMutationInfo => ({
    id: UpdateDataValidationMutation.id,
    params: { ...sheet, ruleId: rule.uid, payload: { type: UpdateRuleType.ALL, payload: rule } },
  });
  const formatted = (rule: { readonly cfId: string }): IMutationInfo => ({
    id: SetConditionalRuleMutation.id,
    params: { ...sheet, cfId: rule.cfId, rule },
  });
  return [
    ...over(validations.getRules(sheet.unitId, sheet.subUnitId) as ISheetDataValidationRule[]).map(
      (rule) => ({ todo: validated(stretched(rule, body, grown)), undo: validated(rule) }),
    ),
    ...over(formats.getSubunitRules(sheet.unitId, sheet.subUnitId)).map((rule) => ({
      todo: formatted(grownFormat(rule, body, grown)),
      undo: formatted(rule),
    })),
  ];
}
