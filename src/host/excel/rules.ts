import { areaAddress } from "../../workbook/address";
import {
  type Comparison,
  type ConditionalFormat,
  type EntryRule,
  limitsOf,
} from "../../workbook/sheet-rules";
import { withNamespace } from "./write-cells";

/** A conditional format that shows where a value is out of its limits. */
export function addFormat(
  worksheet: Excel.Worksheet,
  { area, formula = "", look: { bold, ink, fill } }: ConditionalFormat,
  namespace: string,
): void {
  const range = worksheet.getRange(areaAddress(area));
  const { custom } = range.conditionalFormats.add("Custom");
  custom.rule.formula = `=${withNamespace(formula, namespace)}`;
  if (bold) custom.format.font.bold = true;
  if (ink !== undefined) custom.format.font.color = ink;
  if (fill !== undefined) custom.format.fill.color = fill;
}

/** What may be typed into cells, with the prompt and the refusal. */
export function addEntryRule(worksheet: Excel.Worksheet, rule: EntryRule, namespace: string): void {
  const { dataValidation } = worksheet.getRange(areaAddress(rule.area));
  dataValidation.rule = ruleOf(rule, namespace);
  const { refusal, prompt } = rule;
  if (refusal) {
    const { title = "", text } = refusal;
    dataValidation.errorAlert = { message: text, showAlert: true, style: "Stop", title };
  }
  if (prompt) {
    const { title = "", text } = prompt;
    dataValidation.prompt = { title, message: text, showPrompt: true };
  }
}

const operators: Readonly<Record<Comparison, Excel.BasicDataValidation["operator"]>> = {
  between: "Between",
  notBetween: "NotBetween",
  equal: "EqualTo",
  notEqual: "NotEqualTo",
  greaterThan: "GreaterThan",
  greaterThanOrEqual: "GreaterThanOrEqualTo",
  lessThan: "LessThan",
  lessThanOrEqual: "LessThanOrEqualTo",
};

function ruleOf(rule: EntryRule, namespace: string): Excel.DataValidationRule {
  const { type, from = "" } = rule;
  const formula = (text: string) => `=${withNamespace(text, namespace)}`;
  if (type === "list") return { list: { inCellDropDown: true, source: listSource(from) } };
  if (type === "custom") return { custom: { formula: formula(from) } };
  const { comparison, from: first, to } = limitsOf(rule);
  const limits = {
    formula1: formula(first),
    ...(to !== undefined && { formula2: formula(to) }),
    operator: operators[comparison],
  };
  if (type === "date") return { date: limits };
  return type === "whole" ? { wholeNumber: limits } : { decimal: limits };
}

/** Choices in quotes are the choices themselves; anything else names the cells that hold them. */
function listSource(from: string): string {
  return from.startsWith('"') ? from.slice(1, -1).replaceAll('""', '"') : `=${from}`;
}
