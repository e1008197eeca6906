import type { IMutationInfo } from "@univerjs/core";
import {
  AddConditionalRuleMutation,
  ConditionalFormattingRuleModel,
  DeleteConditionalRuleMutation,
  type IConditionFormattingRule,
  MoveConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import { expect, test } from "vitest";
import { formatSteps } from "../../../src/workbench/following/rule-steps";

const place = { unitId: "book", subUnitId: "sheet" };

test("formats whose cells all leave the sheet are back in their order by undoing", () => {
  const formats = new ConditionalFormattingRuleModel();
  const order = () => (formats.getSubunitRules("book", "sheet") ?? []).map(({ cfId }) => cfId);
  const handlers = [
    AddConditionalRuleMutation,
    DeleteConditionalRuleMutation,
    MoveConditionalRuleMutation,
  ];
  const run = ({ id, params }: IMutationInfo) =>
    handlers
      .find((one) => one.id === id)
      ?.handler({ get: () => formats } as never, params as never);
  const range = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };
  for (const cfId of ["fourth", "third", "second", "first"]) {
    const rule = { cfId, ranges: [range], stopIfTrue: false, rule: {} };
    formats.addRule("book", "sheet", rule as unknown as IConditionFormattingRule);
  }
  const before = order();
  expect(before).toEqual(["first", "second", "third", "fourth"]);
  const leaving = [...(formats.getSubunitRules("book", "sheet") ?? [])]
    .map((rule, at) => ({ rule, after: before[at - 1] }))
    .filter(({ rule }) => rule.cfId !== "first")
    .reverse();
  const steps = leaving.flatMap(({ rule, after }) => formatSteps(place, rule, [], after));
  for (const { todo } of steps) run(todo);
  expect(order()).toEqual(["first"]);
  for (const { undo } of steps.reverse()) undo.forEach(run);
  expect(order()).toEqual(before);
});
