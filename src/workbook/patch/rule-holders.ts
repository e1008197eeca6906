/** Where the rules of a sheet stand in its XML. */
import { readXml, type XmlElement } from "../xml";
import type { RuleElement } from "./rule-changes";

export interface Span {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** An element that says where its rules stand: an entry rule itself, or what is around conditional formats. */
export interface Holder {
  readonly kind: RuleElement;
  readonly element: XmlElement;
  readonly rules: RuleInXml[];
  end: number;
  /** An extension names the cells of its rules in an element. */
  places: Span | undefined;
}

export interface RuleInXml {
  readonly index: number;
  readonly element: XmlElement;
  readonly formulas: Span[];
  end: number;
}

/** What holds the entry rules of a sheet, and counts them. */
export interface RuleList {
  readonly element: XmlElement;
  readonly holders: Holder[];
  end: number;
}

const formulaElements = new Set(["formula", "formula1", "formula2", "f"]);

export function holdersIn(path: string, xml: string): { holders: Holder[]; lists: RuleList[] } {
  const holders: Holder[] = [];
  const lists: RuleList[] = [];
  const counts = { cfRule: 0, dataValidation: 0 };
  let holder: Holder | undefined;
  let rule: RuleInXml | undefined;
  let text: { readonly start: number; text: string } | undefined;
  readXml(path, xml, {
    open(element) {
      const { name, innerStart } = element;
      if (name === "dataValidations") lists.push({ element, holders: [], end: 0 });
      if (name === "conditionalFormatting" || name === "dataValidation") {
        const kind = name === "dataValidation" ? name : "cfRule";
        holder = { kind, element, rules: [], end: 0, places: undefined };
        holders.push(holder);
        if (kind === "dataValidation") lists.at(-1)?.holders.push(holder);
      }
      if (name === "cfRule" || name === "dataValidation") {
        rule = { index: counts[name]++, element, formulas: [], end: 0 };
        holder?.rules.push(rule);
      }
      if (holder && (formulaElements.has(name) || name === "sqref"))
        text = { start: innerStart, text: "" };
    },
    text(run) {
      if (text) text.text += run;
    },
    close(name, end, innerEnd) {
      if (text && text.text !== "" && holder) {
        const span = { ...text, end: innerEnd };
        if (name === "sqref") holder.places = span;
        else rule?.formulas.push(span);
      }
      text = undefined;
      if (rule && (name === "cfRule" || name === "dataValidation")) {
        rule.end = end;
        rule = undefined;
      }
      if (holder && (name === "conditionalFormatting" || name === "dataValidation")) {
        holder.end = end;
        holder = undefined;
      }
      const list = lists.at(-1);
      if (list && name === "dataValidations") list.end = end;
    },
  });
  return { holders, lists };
}

/** The areas over which its rules stand, as they are written. */
export const writtenPlaces = ({ places, element }: Holder): string[] =>
  (places?.text ?? element.attributes.sqref ?? "").trim().split(/\s+/);
