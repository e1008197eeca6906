import { areaAddress } from "../address";
import type { Area } from "../book";
import { type FunctionNames, storedFormula } from "../formula/stored-form";
import type { BesideCells } from "../layout/planned";
import {
  type EntryRule,
  limitsOf,
  type RuleLook,
  type WholeFormat,
  wholeFormats,
} from "../sheet-rules";
import { attributesXml, escapeFormula } from "../xml-text";

const isCompared = ({ type }: EntryRule) =>
  type === "decimal" || type === "whole" || type === "date";

export function entryRuleXml(rule: EntryRule, names: FunctionNames): string {
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

const addressesOf = (areas: readonly Area[]) => areas.map(areaAddress).join(" ");

/** `dxfId` is the number that the file has for its look. */
export function formatXml(
  { format: { formula = "", ranking, stops }, areas }: WholeFormat,
  dxfId: string | undefined,
  priority: number,
  names: FunctionNames,
): string {
  const attributes = attributesXml({
    ...(ranking?.attributes ?? { type: "expression" }),
    dxfId,
    priority: `${priority}`,
    stopIfTrue: stops ? "1" : undefined,
  });
  const inner =
    ranking?.inner ?? `<formula>${escapeFormula(storedFormula(formula, names))}</formula>`;
  return (
    `<conditionalFormatting sqref="${addressesOf(areas)}">` +
    `<cfRule${attributes}>${inner}${ranking?.extension ? extended(priority) : ""}</cfRule></conditionalFormatting>`
  );
}

const X14 = 'xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"';
const XM = 'xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"';

/** What a rule of a sheet is called where its extension says more of it. */
const idOf = (priority: number) =>
  `{B3A6D05E-0000-4000-8000-${priority.toString(16).toUpperCase().padStart(12, "0")}}`;

/** That there is an extension. */
const extended = (priority: number) =>
  `<extLst><ext ${X14} uri="{B025F937-C7B1-47D3-B67F-A62EFF666E3E}"><x14:id>${idOf(priority)}</x14:id></ext></extLst>`;

/** What an extension of the sheet says of a rule; blank where it says nothing. */
export function extensionOf({ format: { ranking }, areas }: WholeFormat, priority: number): string {
  if (!ranking?.extension) return "";
  const inner = ranking.extension.replace(
    /<(\/?)(?=(\w+))/g,
    (_, slash: string, name: string) => `<${slash}${name === "f" ? "xm" : "x14"}:`,
  );
  return `<x14:conditionalFormatting ${X14} ${XM}><x14:cfRule type="dataBar" id="${idOf(priority)}">${inner}</x14:cfRule><xm:sqref>${addressesOf(areas)}</xm:sqref></x14:conditionalFormatting>`;
}

/** All that an extension says of the rules of a sheet. */
export const inExtension = (said: string) =>
  `<ext ${X14} uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"><x14:conditionalFormattings>${said}</x14:conditionalFormattings></ext>`;

/** The extensions of a sheet, as they stand at its end. */
export function extensionXml({ formats }: Pick<BesideCells, "formats">): string {
  const said = wholeFormats(formats).map((one, at) => extensionOf(one, at + 1));
  return said.join("") === "" ? "" : `<extLst>${inExtension(said.join(""))}</extLst>`;
}

/** What the package for writing lacks, as it stands in a sheet between the cells and the margins. */
export function rulesXml(
  { formats, entryRules }: Pick<BesideCells, "formats" | "entryRules">,
  styleOf: (look: RuleLook) => number,
  names: FunctionNames,
): string {
  const painted = wholeFormats(formats).map((one, at) => {
    const { ranking, look } = one.format;
    const isPainted = ranking === undefined || Object.keys(look).length > 0;
    return formatXml(one, isPainted ? `${styleOf(look)}` : undefined, at + 1, names);
  });
  const asked = entryRules.map((rule) => entryRuleXml(rule, names));
  const list =
    asked.length === 0
      ? ""
      : `<dataValidations count="${asked.length}">${asked.join("")}</dataValidations>`;
  return painted.join("") + list;
}
