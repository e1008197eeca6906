/** Rules whose cells came from another sheet of the file, as elements of the sheet on which they are now. */
import type { FunctionNames } from "../formula/stored-form";
import { type InFile, wholeFormats } from "../sheet-rules";
import { entryRuleXml, extensionOf, formatXml, inExtension } from "../write/rules-xml";
import { readXml, type XmlElement } from "../xml";
import { attributesXml } from "../xml-text";
import type { Rules } from "./rule-changes";
import { upTo } from "./sheet-order";
import { type Replacement, splice } from "./splice";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

const upToFormats = upTo("conditionalFormatting");
const upToEntryRules = upTo("dataValidations");

/** `lookOf` gives the number that the file has for the look of a rule. */
export function withArrived(
  path: string,
  xml: string,
  { formats = [], entryRules = [] }: Rules,
  lookOf: (rule: InFile | undefined) => string | undefined,
  names: FunctionNames,
): string {
  const { prefix, end, list, extensions, extension, afterFormats, afterRules, priority } = placesIn(
    path,
    xml,
  );
  const own = (text: string) =>
    prefix === "" ? text : text.replace(/^<\w+/, (tag) => `${tag} xmlns="${main}"`);
  const whole = wholeFormats(formats).map((one, at) => ({ one, at: priority + 1 + at }));
  const painted = whole.map(({ one, at }) =>
    own(formatXml(one, lookOf(one.format.inFile), at, names)),
  );
  const edits = [before(afterFormats, painted.join(""))];
  const asked = entryRules.map((rule) => own(entryRuleXml(rule, names))).join("");
  if (list && asked !== "") edits.push(inside(list, asked, entryRules.length));
  else if (asked !== "") {
    const all = `<dataValidations count="${entryRules.length}">${asked}</dataValidations>`;
    edits.push(before(afterRules, own(all)));
  }
  const said = whole.map(({ one, at }) => extensionOf(one, at)).join("");
  if (said !== "" && extension) edits.push(inside(extension, said));
  else if (said !== "" && extensions) edits.push(inside(extensions, own(inExtension(said))));
  else if (said !== "") edits.push(before(end, own(`<extLst>${inExtension(said)}</extLst>`)));
  return splice(xml, edits);
}

const before = (place: number, text: string): Replacement => ({ start: place, end: place, text });

/** As the first of its elements, which it may count. */
function inside(element: XmlElement, text: string, more = 0): Replacement {
  const { prefix, name, attributes, start, innerStart, selfClosing } = element;
  const count = attributes.count === undefined ? undefined : `${Number(attributes.count) + more}`;
  const opening = `<${prefix}${name}${attributesXml({ ...attributes, count })}>`;
  const closing = selfClosing ? `</${prefix}${name}>` : "";
  return { start, end: innerStart, text: opening + text + closing };
}

/** Where in a sheet such elements stand, and the highest number that a format has in the order of all. */
function placesIn(path: string, xml: string) {
  const open: XmlElement[] = [];
  const found = new Map<string, XmlElement>();
  let [prefix, end, afterFormats, afterRules, priority] = ["", 0, 0, 0, 0];
  readXml(path, xml, {
    open(element) {
      open.push(element);
      if (open.length === 1) prefix = element.prefix;
      if (element.name === "cfRule")
        priority = Math.max(priority, Number(element.attributes.priority ?? 0));
    },
    close(name, after, innerEnd) {
      const element = open.pop() as XmlElement;
      if (open.length === 0) end = innerEnd;
      if (open.length === 1 || name === "conditionalFormattings") found.set(name, element);
      if (open.length === 1 && upToFormats.has(name)) afterFormats = after;
      if (open.length === 1 && upToEntryRules.has(name)) afterRules = after;
    },
  });
  return {
    prefix,
    end,
    afterFormats,
    afterRules,
    priority,
    list: found.get("dataValidations"),
    extensions: found.get("extLst"),
    extension: found.get("conditionalFormattings"),
  };
}
