import { areaAddress } from "../../workbook/address";
import type { Style } from "../../workbook/book";
import { ruleLooks } from "../../workbook/layout/looks";
import type { Rule, Validation } from "../../workbook/layout/planned";
import { ruleFormula } from "../../workbook/write/validation-xml";
import { withNamespace } from "./write-cells";

/** A conditional format that shows where a value is out of its limits. */
export function addRule(worksheet: Excel.Worksheet, rule: Rule, namespace: string): void {
  const range = worksheet.getRange(areaAddress(rule.area));
  const { custom } = range.conditionalFormats.add("Custom");
  custom.rule.formula = `=${withNamespace(ruleFormula(rule), namespace)}`;
  const { bold, ink, fill }: Style = ruleLooks[rule.look];
  if (bold) custom.format.font.bold = true;
  if (ink !== undefined) custom.format.font.color = ink;
  if (fill !== undefined) custom.format.fill.color = fill;
}

/** What may be typed into cells, with the prompt and the refusal. */
export function addValidation(
  worksheet: Excel.Worksheet,
  validation: Validation,
  namespace: string,
): void {
  const { dataValidation } = worksheet.getRange(areaAddress(validation.area));
  dataValidation.rule = ruleOf(validation, namespace);
  dataValidation.errorAlert = {
    message: validation.refusal,
    showAlert: true,
    style: "Stop",
    title: "Please check",
  };
  if (validation.prompt !== undefined) {
    const { title, text } = validation.prompt;
    dataValidation.prompt = { title, message: text, showPrompt: true };
  }
}

/** Where a plan sets no limit, any number may be typed. */
const LEAST = "-1E+307";
const MOST = "1E+307";

function ruleOf({ type, from, to }: Validation, namespace: string): Excel.DataValidationRule {
  const formula = (text: string) => `=${withNamespace(text, namespace)}`;
  if (type === "list") return { list: { inCellDropDown: true, source: listSource(from ?? "") } };
  if (type === "custom") return { custom: { formula: formula(from ?? "") } };
  const limits = {
    formula1: formula(from ?? LEAST),
    formula2: formula(to ?? MOST),
    operator: "Between" as const,
  };
  if (type === "date") return { date: limits };
  return type === "whole" ? { wholeNumber: limits } : { decimal: limits };
}

/** Choices in quotes are the choices themselves; anything else names the cells that hold them. */
function listSource(from: string): string {
  return from.startsWith('"') ? from.slice(1, -1).replaceAll('""', '"') : `=${from}`;
}
