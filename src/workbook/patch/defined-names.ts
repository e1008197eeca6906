import { fixedAddress, sheetPrefix } from "../address";
import type { DefinedName } from "../book";
import { type FunctionNames, storedFormula } from "../formula/stored-form";
import { readXml, type XmlElement } from "../xml";
import { attributesXml, escapeFormula } from "../xml-text";
import type { LayoutEdits } from "./layout-edits";
import { type Replacement, splice } from "./splice";

/** What may stand before the names in the workbook's own part (ECMA-376 Part 1, 18.2.27). */
const beforeNames = new Set(["sheets", "functionGroups", "externalReferences"]);

const keyOf = (name: string, sheet: string | undefined) =>
  JSON.stringify([name.toLowerCase(), sheet ?? null]);

/** The names that changed, by name and sheet; null for one that is gone. */
export function namesBetween(
  before: readonly DefinedName[],
  after: readonly DefinedName[],
): Map<string, DefinedName | null> {
  const old = new Map(before.map((one) => [keyOf(one.name, one.sheet), one]));
  const now = new Map(after.map((one) => [keyOf(one.name, one.sheet), one]));
  const changes = new Map<string, DefinedName | null>();
  for (const key of old.keys()) if (!now.has(key)) changes.set(key, null);
  for (const [key, one] of now) if (old.get(key)?.formula !== one.formula) changes.set(key, one);
  return changes;
}

/** The name under which spreadsheets keep where the filter of a sheet is. */
const FILTERED = "_xlnm._FilterDatabase";

export function filterNames(
  layout: ReadonlyMap<string, LayoutEdits> | undefined,
): Map<string, DefinedName | null> {
  const changes = new Map<string, DefinedName | null>();
  for (const [sheet, { filter }] of layout ?? []) {
    if (filter === undefined) continue;
    const formula = filter && `${sheetPrefix(sheet)}${fixedAddress(filter.area)}`;
    changes.set(
      keyOf(FILTERED, sheet),
      formula === null ? null : { name: FILTERED, formula, sheet },
    );
  }
  return changes;
}

/** The workbook's own part with the names as they are now. */
export function patchNames(
  path: string,
  xml: string,
  changes: ReadonlyMap<string, DefinedName | null>,
  functions: FunctionNames,
): string {
  const left = new Map(changes);
  const sheets: string[] = [];
  const names: string[] = [];
  const open: XmlElement[] = [];
  let list: Replacement | undefined;
  let place = 0;
  let prefix = "";
  const nameXml = (attributes: Readonly<Record<string, string | undefined>>, formula: string) =>
    `<${prefix}definedName${attributesXml(attributes)}>${escapeFormula(storedFormula(formula, functions))}</${prefix}definedName>`;
  readXml(path, xml, {
    open(element) {
      open.push(element);
      if (element.name === "sheet") sheets.push(element.attributes.name ?? "");
      if (element.name === "workbook") prefix = element.prefix;
    },
    close(name, end) {
      const element = open.pop();
      if (!element) return;
      const { start, attributes } = element;
      if (open.length === 1 && beforeNames.has(name)) place = end;
      if (name === "definedNames") list = { start, end, text: "" };
      if (name !== "definedName") return;
      const { name: own = "", localSheetId } = attributes;
      const key = keyOf(own, localSheetId === undefined ? undefined : sheets[Number(localSheetId)]);
      const change = left.get(key);
      left.delete(key);
      if (change === undefined) names.push(xml.slice(start, end));
      else if (change) names.push(nameXml(attributes, change.formula));
    },
  });
  for (const one of left.values()) {
    if (!one) continue;
    const at = one.sheet === undefined ? undefined : `${sheets.indexOf(one.sheet)}`;
    const hidden = one.name === FILTERED ? "1" : undefined;
    names.push(nameXml({ name: one.name, localSheetId: at, hidden }, one.formula));
  }
  const tag = `${prefix}definedNames`;
  // A list without a name is a damaged one.
  const text = names.length === 0 ? "" : `<${tag}>${names.join("")}</${tag}>`;
  return splice(xml, [{ ...(list ?? { start: place, end: place }), text }]);
}
