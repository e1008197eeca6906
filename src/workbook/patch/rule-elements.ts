/** The elements of a sheet that say its rules, with other areas and other references in their formulas. */
import { areaAddress } from "../address";
import { overlap } from "../areas";
import type { Area } from "../book";
import { referencesOf, withReferences } from "../formula/references";
import { type FunctionNames, shownFormula, storedFormula } from "../formula/stored-form";
import { areaIfAny } from "../read/place";
import { readXml, type XmlElement } from "../xml";
import { escapeFormula } from "../xml-text";
import type { RuleChanges, RuleElement, RulePiece } from "./rule-changes";
import { type Replacement, splice } from "./splice";

interface Span {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** An element that says where its rules stand: an entry rule itself, or what is around conditional formats. */
interface Holder {
  readonly kind: RuleElement;
  readonly element: XmlElement;
  readonly rules: RuleInXml[];
  end: number;
  /** An extension names the cells of its rules in an element. */
  places: Span | undefined;
}

interface RuleInXml {
  readonly index: number;
  readonly element: XmlElement;
  readonly formulas: Span[];
  end: number;
}

/** What holds the entry rules of a sheet, and counts them. */
interface List {
  readonly element: XmlElement;
  readonly holders: Holder[];
  end: number;
}

const formulaElements = new Set(["formula", "formula1", "formula2", "f"]);

function holdersIn(path: string, xml: string): { holders: Holder[]; lists: List[] } {
  const holders: Holder[] = [];
  const lists: List[] = [];
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

export interface PatchedRules {
  readonly xml: string;
  /** Whether rules that are not understood stand where cells were that were put elsewhere. */
  readonly stale: boolean;
}

/**
 * The sheet's XML with its rules as they are now; those that are not understood go along with rules over the same
 * cells. `cuts` are where cells stood that were put elsewhere.
 */
export function patchRules(
  path: string,
  xml: string,
  changes: RuleChanges,
  names: FunctionNames,
  cuts: readonly Area[] = [],
): PatchedRules {
  const { holders, lists } = holdersIn(path, xml);
  const copies = new Map<Holder, number>();
  let stale = false;
  const replacements = holders.flatMap((holder): Replacement[] => {
    const piecesFor = piecesIn(holder, changes);
    if (!piecesFor) {
      const isRead = ({ index }: RuleInXml) => changes.get(holder.kind)?.read.has(index);
      stale ||= !holder.rules.every(isRead) && isCut(holder, cuts);
      return [];
    }
    const places = new Set([...piecesFor.values()].flat().map(placesOf));
    copies.set(holder, places.size);
    const texts = [...places].map((place, copy) =>
      holderText(xml, holder, piecesFor, place, copy > 0, names),
    );
    return [{ start: holder.element.start, end: holder.end, text: texts.join("") }];
  });
  const counted = lists.flatMap((list) => countOf(xml, list, copies));
  const gone = counted.filter(({ text }) => text === "");
  const isGone = ({ start, end }: Replacement) =>
    gone.some((list) => start > list.start && end < list.end);
  const left = replacements.filter((one) => !isGone(one));
  return { xml: splice(xml, [...left, ...counted]), stale };
}

const writtenPlaces = ({ places, element }: Holder): string[] =>
  (places?.text ?? element.attributes.sqref ?? "").trim().split(/\s+/);

const isCut = (holder: Holder, cuts: readonly Area[]): boolean =>
  writtenPlaces(holder).some((place) => {
    const area = areaIfAny(place);
    return area !== undefined && cuts.some((cut) => overlap(cut, area));
  });

const placesOf = ({ areas }: RulePiece) => areas.join(" ");

/** What becomes of each rule of a holder; undefined where nothing does. */
function piecesIn(
  holder: Holder,
  changes: RuleChanges,
): Map<RuleInXml, readonly RulePiece[]> | undefined {
  const { kind, rules } = holder;
  const its = changes.get(kind);
  if (!its) return undefined;
  const known = rules.map(({ index }) => its.pieces.get(index));
  const written = writtenPlaces(holder);
  const moved = written.map((place) => its.areas.get(addressIn(place)) ?? place);
  const isMoved = moved.some((place, index) => place !== written[index]);
  if (!isMoved && known.every((pieces) => pieces === undefined)) return undefined;
  // What is not understood goes along with the others.
  const union = [...new Set(known.flatMap((pieces) => pieces ?? []).flatMap(({ areas }) => areas))];
  const along = [{ areas: isMoved || union.length === 0 ? moved : union }];
  return new Map(rules.map((rule, index) => [rule, known[index] ?? along]));
}

/** The holder over some areas, with those of its rules that stand there. */
function holderText(
  xml: string,
  { kind, element, end, rules, places }: Holder,
  piecesFor: ReadonlyMap<RuleInXml, readonly RulePiece[]>,
  place: string,
  isCopy: boolean,
  names: FunctionNames,
): string {
  const { start, innerStart, attributes } = element;
  const edits: Replacement[] = [];
  const opening = openingTag(xml.slice(start, innerStart), places ? undefined : place, isCopy);
  edits.push({ start, end: innerStart, text: opening });
  if (places) edits.push({ ...places, text: place });
  for (const rule of rules) {
    const piece = piecesFor.get(rule)?.find((its) => placesOf(its) === place);
    const { type } = kind === "cfRule" ? rule.element.attributes : attributes;
    if (piece) edits.push(...formulaEdits(rule, piece, type ?? "", names));
    else edits.push({ start: rule.element.start, end: rule.end, text: "" });
  }
  const inHolder = edits.map((edit) => {
    return { ...edit, start: edit.start - start, end: edit.end - start };
  });
  return splice(xml.slice(start, end), inHolder);
}

/** A copy is another element, and has no name of its own. */
function openingTag(tag: string, place: string | undefined, isCopy: boolean): string {
  const placed =
    place === undefined ? tag : tag.replace(/(\ssqref\s*=\s*)(?:"[^"]*"|'[^']*')/, `$1"${place}"`);
  return isCopy ? placed.replace(/\s\w+:uid\s*=\s*(?:"[^"]*"|'[^']*')/, "") : placed;
}

/** Kinds that compare their own cell with their formulas, as which they are read. */
const compared = new Set(["cellIs", "textLength"]);

function formulaEdits(
  { formulas }: RuleInXml,
  { references }: RulePiece,
  type: string,
  names: FunctionNames,
): Replacement[] {
  if (!references) return [];
  let at = 0;
  return formulas.flatMap(({ start, end, text }) => {
    const shown = shownFormula(text, names);
    if (compared.has(type)) at++;
    const from = at;
    at += referencesOf(shown).length;
    const now = withReferences(shown, references.slice(from, at));
    return now === shown ? [] : [{ start, end, text: escapeFormula(storedFormula(now, names)) }];
  });
}

/** The list that counts its rules, where there are more or fewer; a list without any is a damaged one. */
function countOf(
  xml: string,
  { element, end, holders }: List,
  copies: ReadonlyMap<Holder, number>,
): Replacement[] {
  const now = holders.reduce((sum, holder) => sum + (copies.get(holder) ?? 1), 0);
  const { start, innerStart } = element;
  if (now === holders.length) return [];
  if (now === 0) return [{ start, end, text: "" }];
  const tag = xml.slice(start, innerStart);
  const text = tag.replace(/(\scount\s*=\s*)(?:"[^"]*"|'[^']*')/, `$1"${now}"`);
  return [{ start, end: innerStart, text }];
}

/** As rules are kept by it; a place that is none is left as it is. */
function addressIn(place: string): string {
  const area = areaIfAny(place);
  return area ? areaAddress(area) : place;
}
