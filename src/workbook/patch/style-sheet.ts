import { type Style, sides } from "../book";
import { builtInFormats } from "../read/number-formats";
import { readXml, type XmlElement } from "../xml";
import { attributesXml } from "../xml-text";
import type { LookEdit } from "./edits";
import { type Replacement, splice } from "./splice";

/** In the order of the schema (ECMA-376 Part 1, 18.8.39). */
const listNames = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs"] as const;
type ListName = (typeof listNames)[number];

/** Of a workbook that has no looks yet. */
export const noStyles =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"></styleSheet>';

/** The first entries, which every file has that other programs write. */
const usual: Readonly<Partial<Record<ListName, string>>> = {
  fonts: "<font/>",
  fills:
    '<fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill>',
  borders: "<border/>",
  cellXfs: "<xf/>",
};

const childOrder =
  "b i strike condense extend outline shadow u vertAlign sz color name family charset scheme left right top bottom diagonal vertical horizontal alignment protection extLst".split(
    " ",
  );

/** The first number that belongs to no format which files leave unsaid. */
const FIRST_OWN_FORMAT = 164;

/** Shown by the settings of the machine, not as a person saw it. */
const MACHINES_DATE = 14;

type Attributes = Readonly<Record<string, string | undefined>>;

interface Child {
  readonly attributes: Attributes;
  readonly text: string;
}

/** An entry of a list, its children by name. */
interface Entry {
  readonly attributes: Attributes;
  readonly children: ReadonlyMap<string, Child>;
  readonly text: string;
}

interface List {
  readonly entries: Entry[];
  added: boolean;
  element?: XmlElement;
  end: number;
}

const argb = (hex: string) => `FF${hex.slice(1).toUpperCase()}`;

/** The looks of a file, and new ones after the pattern of those that its cells have. */
export class StyleSheet {
  readonly #lists = new Map<string, List>(
    listNames.map((name) => [name, { entries: [], added: false, end: 0 }]),
  );
  #prefix = "";
  #inner = 0;

  constructor(
    path: string,
    private readonly xml: string,
  ) {
    this.#read(path, xml);
    for (const [name, text] of Object.entries(usual))
      if (this.#list(name as ListName).entries.length === 0)
        this.#read(path, `<styleSheet><${name}>${text}</${name}></styleSheet>`);
  }

  #read(path: string, xml: string): void {
    const own = xml === this.xml;
    const open: XmlElement[] = [];
    let children = new Map<string, Child>();
    readXml(path, xml, {
      open: (element) => {
        if (open.length === 0 && own)
          [this.#prefix, this.#inner] = [element.prefix, element.innerStart];
        if (open.length === 2) children = new Map();
        open.push(element);
      },
      close: (name, end) => {
        const element = open.pop();
        const list = this.#lists.get(open[1]?.name ?? name);
        if (!element || !list) return;
        const { attributes, start } = element;
        const text = xml.slice(start, end);
        if (open.length === 3) children.set(name, { attributes, text });
        if (open.length === 2) list.entries.push({ attributes, children, text });
        if (open.length === 1 && own) Object.assign(list, { element, end });
      },
    });
  }

  readonly #list = (name: ListName) => this.#lists.get(name) as List;

  /** Which of the looks a cell has after the edit that has this one now. */
  lookOf(index: number, { before, after }: LookEdit): number {
    const { entries } = this.#list("cellXfs");
    const own = entries[index] ?? entries[0];
    if (!own || Object.keys(after).length === 0) return 0;
    const differs = (...keys: (keyof Style)[]) =>
      keys.some((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]));
    const place = (name: string) => Number(own.attributes[name] ?? 0);
    const attributes = {
      ...own.attributes,
      ...(differs("format") && {
        numFmtId: `${this.#format(after.format)}`,
        applyNumberFormat: "1",
      }),
      ...(differs("bold", "italic", "underline", "strike", "size", "ink") && {
        fontId: `${this.#font(place("fontId"), before, after)}`,
        applyFont: "1",
      }),
      ...(differs("fill") && { fillId: `${this.#fill(after.fill)}`, applyFill: "1" }),
      ...(differs("border", "borderLines") && {
        borderId: `${this.#border(place("borderId"), before, after)}`,
        applyBorder: "1",
      }),
      ...(differs("align", "vertical", "wrap") && { applyAlignment: "1" }),
    };
    const children = new Map(own.children);
    if (differs("align", "vertical", "wrap"))
      children.set(
        "alignment",
        this.#child("alignment", {
          ...children.get("alignment")?.attributes,
          horizontal: after.align,
          ...(differs("vertical") && { vertical: after.vertical }),
          wrapText: after.wrap ? "1" : undefined,
        }),
      );
    return this.#add("cellXfs", "xf", attributes, children);
  }

  #format(formatCode: string | undefined): number {
    const builtIn = [...builtInFormats].find(
      ([number, code]) => code === formatCode && number !== MACHINES_DATE,
    );
    if (formatCode === undefined || builtIn) return builtIn?.[0] ?? 0;
    const all = this.#list("numFmts").entries.map(({ attributes }) => attributes);
    const known = all.find((format) => format.formatCode === formatCode);
    if (known) return Number(known.numFmtId);
    const numbers = all.map(({ numFmtId }) => Number(numFmtId) + 1);
    const numFmtId = Math.max(FIRST_OWN_FORMAT, ...numbers);
    this.#add("numFmts", "numFmt", { numFmtId: `${numFmtId}`, formatCode });
    return numFmtId;
  }

  #font(index: number, before: Style, after: Style): number {
    const { entries } = this.#list("fonts");
    const children = new Map(entries[index]?.children);
    const put = (key: keyof Style, name: string, attributes: Attributes = {}) => {
      if (before[key] === after[key]) return;
      children.delete(name);
      if (after[key]) children.set(name, this.#child(name, attributes));
    };
    put("bold", "b");
    put("italic", "i");
    put("underline", "u");
    put("strike", "strike");
    put("ink", "color", { rgb: after.ink && argb(after.ink) });
    put("size", "sz", { val: `${after.size}` });
    const usualSize = entries[0]?.children.get("sz");
    if (after.size === undefined && usualSize) children.set("sz", usualSize);
    return this.#add("fonts", "font", {}, children);
  }

  #fill(fill: string | undefined): number {
    if (fill === undefined) return 0;
    const foreground = this.#child("fgColor", { rgb: argb(fill) });
    const background = this.#child("bgColor", { indexed: "64" });
    const pattern = this.#child(
      "patternFill",
      { patternType: "solid" },
      foreground.text + background.text,
    );
    return this.#add("fills", "fill", {}, new Map([["patternFill", pattern]]));
  }

  /** A side that is as it was keeps what its file says of it. */
  #border(index: number, before: Style, after: Style): number {
    const own = this.#list("borders").entries[index];
    const children = new Map(own?.children);
    for (const side of sides) {
      const [was, colour] = [before.border?.[side], after.border?.[side]];
      const style = after.borderLines?.[side] ?? "thin";
      if (was === colour && style === (before.borderLines?.[side] ?? "thin")) continue;
      const line = colour && this.#child("color", { rgb: argb(colour) }).text;
      children.set(side, this.#child(side, { style: line && style }, line));
    }
    return this.#add("borders", "border", own?.attributes ?? {}, children);
  }

  #child(name: string, attributes: Attributes, inner = ""): Child {
    const tag = this.#prefix + name;
    const opening = `<${tag}${attributesXml(attributes)}`;
    return { attributes, text: inner === "" ? `${opening}/>` : `${opening}>${inner}</${tag}>` };
  }

  /** Its place in the list; what is not there yet becomes the last. */
  #add(
    listName: ListName,
    name: string,
    attributes: Attributes,
    children: ReadonlyMap<string, Child> = new Map(),
  ): number {
    const inner = [...children]
      .sort(([one], [other]) => childOrder.indexOf(one) - childOrder.indexOf(other))
      .map(([, { text }]) => text)
      .join("");
    const entry = { ...this.#child(name, attributes, inner), children };
    const list = this.#list(listName);
    const known = list.entries.findIndex(({ text }) => text === entry.text);
    if (known >= 0) return known;
    list.added = true;
    return list.entries.push(entry) - 1;
  }

  /** The style sheet with the new looks in it. */
  text(): string {
    let next = this.#inner;
    const replacements: Replacement[] = [];
    for (const name of listNames) {
      const { entries, added, element, end } = this.#list(name);
      const [start, after] = element ? [element.start, end] : [next, next];
      next = after;
      if (!added) continue;
      const texts = entries.map(({ text }) => text).join("");
      const { text } = this.#child(
        name,
        { ...element?.attributes, count: `${entries.length}` },
        texts,
      );
      replacements.push({ start, end: after, text });
    }
    return splice(this.xml, replacements);
  }
}
