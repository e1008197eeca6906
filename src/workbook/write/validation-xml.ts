import { addressOf, areaAddress } from "../address";
import { type FunctionNames, storedFormula } from "../formula/stored-form";
import type { PlannedSheet, Rule, Validation } from "../layout/planned";
import { escapeAttribute, escapeFormula } from "../xml-text";

/** Widest numbers that a cell holds: a number is asked for, whatever its size. */
const anyNumber = { from: "-1E+307", to: "1E+307" };

function comparison({ type, from, to }: Validation): { operator?: string; formulas: string[] } {
  if (type === "list" || type === "custom") return { formulas: [from ?? ""] };
  if (from !== undefined && to !== undefined) return { operator: "between", formulas: [from, to] };
  if (from !== undefined) return { operator: "greaterThanOrEqual", formulas: [from] };
  if (to !== undefined) return { operator: "lessThanOrEqual", formulas: [to] };
  return { operator: "between", formulas: [anyNumber.from, anyNumber.to] };
}

function validationXml(validation: Validation, names: FunctionNames): string {
  const { operator, formulas } = comparison(validation);
  const attributes = {
    type: validation.type,
    ...(operator === undefined ? {} : { operator }),
    allowBlank: "1",
    showInputMessage: "1",
    showErrorMessage: "1",
    errorTitle: "Please check",
    error: validation.refusal,
    ...(validation.prompt
      ? { promptTitle: validation.prompt.title, prompt: validation.prompt.text }
      : {}),
    sqref: areaAddress(validation.area),
  };
  const listed = Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${escapeAttribute(value)}"`)
    .join("");
  const inner = formulas
    .map((formula, index) => {
      const text = escapeFormula(storedFormula(formula, names));
      return `<formula${index + 1}>${text}</formula${index + 1}>`;
    })
    .join("");
  return `<dataValidation${listed}>${inner}</dataValidation>`;
}

/** Texts and blanks are neither above nor below; a spreadsheet's own comparison puts texts above all numbers. */
export function ruleFormula({ area, test }: Rule): string {
  const cell = addressOf(area.row, area.column);
  if (test === "error") return `ISERROR(${cell})`;
  if ("formula" in test) return test.formula;
  return "above" in test
    ? `AND(ISNUMBER(${cell}),${cell}>${test.above})`
    : `AND(ISNUMBER(${cell}),${cell}<${test.below})`;
}

function ruleXml(rule: Rule, priority: number, style: number, names: FunctionNames): string {
  const formula = escapeFormula(storedFormula(ruleFormula(rule), names));
  return (
    `<conditionalFormatting sqref="${areaAddress(rule.area)}">` +
    `<cfRule type="expression" dxfId="${style}" priority="${priority}"><formula>${formula}</formula></cfRule>` +
    "</conditionalFormatting>"
  );
}

/** What the package for writing lacks, as it stands in a sheet between the cells and the margins. */
export function rulesXml(
  sheet: PlannedSheet,
  styleOf: (look: Rule["look"]) => number,
  names: FunctionNames,
): string {
  const rules = sheet.rules.map((rule, at) => ruleXml(rule, at + 1, styleOf(rule.look), names));
  const validations = sheet.validations.map((validation) => validationXml(validation, names));
  const count = validations.length;
  const list =
    count === 0
      ? ""
      : `<dataValidations count="${count}">${validations.join("")}</dataValidations>`;
  return rules.join("") + list;
}
