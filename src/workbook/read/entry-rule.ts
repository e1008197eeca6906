import { addressOf } from "../address";
import type { Area } from "../book";
import type { Comparison, EntryRule, Refusal, Words } from "../sheet-rules";
import { isOn } from "../xml";
import { unescapeText } from "../xml-text";
import { comparison, isComparison } from "./comparison";

type Attributes = Readonly<Record<string, string>>;

const LONGEST_WORDS = 1000;

const words = (text: string | undefined) =>
  text === undefined || text === "" ? undefined : unescapeText(text).slice(0, LONGEST_WORDS);

/** What a file asks of an area; undefined where that cannot be told. */
export function entryRule(
  area: Area,
  rule: Attributes,
  from: string | undefined,
  to: string | undefined,
): EntryRule | undefined {
  const test = testOf(area, rule, from, to);
  if (!test) return undefined;
  const prompt = isOn(rule.showInputMessage)
    ? titled(rule.promptTitle, words(rule.prompt))
    : undefined;
  const judges = test.type !== "any" && isOn(rule.showErrorMessage);
  return {
    area,
    ...test,
    // The file's word says the opposite of what it does (ECMA-376 part 1, 18.3.1.32).
    ...(test.type === "list" && isOn(rule.showDropDown) && { arrowHidden: true }),
    blank: isOn(rule.allowBlank),
    ...(prompt && { prompt }),
    ...(judges && { refusal: refusalOf(rule, test) }),
  };
}

/** Undefined where there is nothing to be read. */
function titled(itsTitle: string | undefined, text: string | undefined): Words | undefined {
  const title = words(itsTitle);
  if (title === undefined) return text === undefined ? undefined : { text };
  return { title, text: text ?? "" };
}

function refusalOf({ errorStyle, errorTitle, error }: Attributes, test: Test): Refusal {
  const text = words(error) ?? usualRefusal(test);
  const mild = errorStyle === "warning" || errorStyle === "information" ? errorStyle : undefined;
  return { ...titled(errorTitle, text), text, ...(mild && { mild }) };
}

type Test = Pick<EntryRule, "type" | "comparison" | "from" | "to">;

function testOf(
  area: Area,
  { type = "none", operator = "between" }: Attributes,
  from: string | undefined,
  to: string | undefined,
): Test | undefined {
  if (type === "none") return { type: "any" };
  if (from === undefined) return undefined;
  if (type === "list" || type === "custom") return { type, from };
  if (type === "textLength") {
    const test = comparison(`LEN(${addressOf(area.row, area.column)})`, operator, from, to);
    return test === undefined ? undefined : { type: "custom", from: test };
  }
  const kind = type === "time" ? "decimal" : type;
  if ((kind !== "decimal" && kind !== "whole" && kind !== "date") || !isComparison(operator))
    return undefined;
  if (operator !== "between" && operator !== "notBetween")
    return { type: kind, comparison: operator, from };
  return to === undefined ? undefined : { type: kind, comparison: operator, from, to };
}

const kinds = { decimal: "a number", whole: "a whole number", date: "a date" } as const;

const relations: Record<Comparison, (from: string, to: string) => string> = {
  between: (from, to) => `from ${from} to ${to}`,
  notBetween: (from, to) => `outside ${from} to ${to}`,
  equal: (from) => `equal to ${from}`,
  notEqual: (from) => `other than ${from}`,
  greaterThan: (from) => `above ${from}`,
  greaterThanOrEqual: (from) => `of ${from} or more`,
  lessThan: (from) => `below ${from}`,
  lessThanOrEqual: (from) => `of ${from} or less`,
};

/** Where the file has no words of its own. Bounds of dates are serial numbers, which tell nobody anything. */
function usualRefusal({ type, comparison, from = "", to = "" }: Test): string {
  if (type === "list") return "Choose one from the list.";
  if (type !== "decimal" && type !== "whole" && type !== "date")
    return "The workbook does not allow this here.";
  const relation = comparison && type !== "date" ? ` ${relations[comparison](from, to)}` : "";
  return type === "date" && comparison
    ? "Give a date within the limits of the workbook."
    : `Give ${kinds[type]}${relation}.`;
}
