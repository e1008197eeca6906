import { areaAddress } from "../address";
import { type FunctionNames, storedFormula } from "../formula/stored-form";
import type { BesideCells } from "../layout/planned";
import { type ConditionalFormat, type EntryRule, limitsOf, type RuleLook } from "../sheet-rules";
import { attributesXml, escapeFormula } from "../xml-text";

const isCompared = ({ type }: EntryRule) =>
  type === "decimal" || type === "whole" || type === "date";

function entryRuleXml(rule: EntryRule, names: FunctionNames): string {
  const { type, area, arrowHidden, blank, prompt, refusal } = rule;
  const { comparison, from, to } = isCompared(rule) ? limitsOf(rule) : rule;
  const attributes = attributesXml({
    type: type === "any" ? undefined : type,
    errorStyle: refusal?.mild,
    operator: comparison,
    showDropDown: arrowHidden ? "1" : undefined,
    allowBlank: blank ? "1" : undefined,
    showInputMessage: prompt && "1",
    showErrorMessage: refusal && "1",
    errorTitle: refusal?.title,
    error: refusal?.text,
    promptTitle: prompt?.title,
    prompt: prompt?.text,
    sqref: areaAddress(area),
  });
  const inner = [from, to].map((formula, index) => {
    if (formula === undefined) return "";
    const text = escapeFormula(storedFormula(formula, names));
    return `<formula${index + 1}>${text}</formula${index + 1}>`;
  });
  return `<dataValidation${attributes}>${inner.join("")}</dataValidation>`;
}

function formatXml(
  { area, formula = "", ranking, look, stops }: ConditionalFormat,
  styleOf: (look: RuleLook) => number,
  priority: number,
  names: FunctionNames,
): string {
  const painted = ranking === undefined || Object.keys(look).length > 0;
  const attributes = attributesXml({
    ...(ranking?.attributes ?? { type: "expression" }),
    dxfId: painted ? `${styleOf(look)}` : undefined,
    priority: `${priority}`,
    stopIfTrue: stops ? "1" : undefined,
  });
  const inner =
    ranking?.inner ?? `<formula>${escapeFormula(storedFormula(formula, names))}</formula>`;
  return (
    `<conditionalFormatting sqref="${areaAddress(area)}">` +
    `<cfRule${attributes}>${inner}</cfRule></conditionalFormatting>`
  );
}

/** What the package for writing lacks, as it stands in a sheet between the cells and the margins. */
export function rulesXml(
  { formats, entryRules }: Pick<BesideCells, "formats" | "entryRules">,
  styleOf: (look: RuleLook) => number,
  names: FunctionNames,
): string {
  const painted = formats.map((one, at) => formatXml(one, styleOf, at + 1, names));
  const asked = entryRules.map((rule) => entryRuleXml(rule, names));
  const list =
    asked.length === 0
      ? ""
      : `<dataValidations count="${asked.length}">${asked.join("")}</dataValidations>`;
  return painted.join("") + list;
}
