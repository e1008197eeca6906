/** The elements of a sheet that say its rules, with other areas and other references in their formulas. */
import { areaAddress } from "../address";
import { overlap } from "../areas";
import type { Area } from "../book";
import { referencesOf, withReferences } from "../formula/references";
import { type FunctionNames, shownFormula, storedFormula } from "../formula/stored-form";
import { areaIfAny } from "../read/place";
import { escapeFormula } from "../xml-text";
import type { RuleChanges, RulePiece } from "./rule-changes";
import {
  type Holder,
  holdersIn,
  type RuleInXml,
  type RuleList,
  writtenPlaces,
} from "./rule-holders";
import { type Replacement, splice } from "./splice";

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
  const moved = written.map((place) => {
    const now = its.areas.get(addressIn(place)) ?? place;
    return now === "" && !saysMoreOfBars(holder) ? place : now;
  });
  const isMoved = moved.some((place, index) => place !== written[index]);
  if (!isMoved && known.every((pieces) => pieces === undefined)) return undefined;
  // What is not understood goes along with the others.
  const union = [...new Set(known.flatMap((pieces) => pieces ?? []).flatMap(({ areas }) => areas))];
  const left = moved.filter((place) => place !== "");
  const along = left.length === 0 ? [] : [{ areas: isMoved || union.length === 0 ? left : union }];
  return new Map(rules.map((rule, index) => [rule, known[index] ?? along]));
}

/** An extension says of bars what their own element cannot, and goes with them. */
const saysMoreOfBars = ({ places, rules }: Holder) =>
  places !== undefined && rules.every(({ element }) => element.attributes.type === "dataBar");

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
  { element, end, holders }: RuleList,
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
