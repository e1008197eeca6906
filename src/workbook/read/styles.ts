import { type BorderLine, borderLines, type Side, type Style, sides } from "../book";
import type { WorkbookPackage } from "../package/open-package";
import type { RuleLook } from "../sheet-rules";
import { isOn, readShortXml, type XmlElement } from "../xml";
import { attributesXml } from "../xml-text";
import { colourOf, type Theme, withoutTheme } from "./colours";
import { builtInFormats } from "./number-formats";

type Changeable<T> = { -readonly [Key in keyof T]: T[Key] };

const isLeftOn = (attributes: Readonly<Record<string, string>>) =>
  attributes.val !== "0" && attributes.val !== "false";

interface Borders {
  readonly border: Partial<Record<Side, string>>;
  readonly borderLines: Partial<Record<Side, BorderLine>>;
}

/** Reads the lists of fonts, fills and borders, then the formats that combine them. */
class StyleLists {
  readonly formats = new Map(builtInFormats);
  readonly fonts: Changeable<Style>[] = [];
  readonly fills: Changeable<Style>[] = [];
  readonly borders: Borders[] = [];
  readonly cells: Changeable<Style>[] = [];
  readonly differences: Changeable<RuleLook>[] = [];
  #list = "";
  #side: Side | undefined;
  #part = "";
  #difference: XmlElement | undefined;
  /** Of its text what was written, and from where on it is as in the file. */
  #written = "";
  #from = 0;

  constructor(
    private readonly xml: string,
    private readonly theme: Theme,
  ) {}

  open(element: XmlElement): void {
    const { name, attributes } = element;
    if (/^(?:fonts|fills|borders|cellXfs|numFmts|cellStyleXfs|dxfs)$/.test(name)) this.#list = name;
    if (this.#list === "numFmts" && name === "numFmt")
      this.formats.set(Number(attributes.numFmtId), attributes.formatCode ?? "");
    else if (this.#list === "fonts") this.#font(name, attributes);
    else if (this.#list === "fills") this.#fill(name, attributes);
    else if (this.#list === "borders") this.#border(name, attributes);
    else if (this.#list === "cellXfs") this.#cell(name, attributes);
    else if (this.#list === "dxfs") this.#openDifference(element);
  }

  close(name: string, end: number): void {
    if (name === this.#list) this.#list = "";
    if (name === "dxf") this.#closeDifference(end);
  }

  #font(name: string, attributes: Readonly<Record<string, string>>): void {
    if (name === "font") this.fonts.push({});
    const font = this.fonts.at(-1);
    if (!font) return;
    if (name === "b" && isLeftOn(attributes)) font.bold = true;
    if (name === "i" && isLeftOn(attributes)) font.italic = true;
    if (name === "u" && attributes.val !== "none") font.underline = true;
    if (name === "strike" && isLeftOn(attributes)) font.strike = true;
    if (name === "sz") font.size = Number(attributes.val);
    const ink = name === "color" ? colourOf(attributes, this.theme) : undefined;
    if (ink !== undefined && ink !== "#000000") font.ink = ink;
  }

  #fill(name: string, attributes: Readonly<Record<string, string>>): void {
    if (name === "fill") this.fills.push({});
    const fill = this.fills.at(-1);
    const colour = name === "fgColor" ? colourOf(attributes, this.theme) : undefined;
    if (fill && colour !== undefined) fill.fill = colour;
  }

  #border(name: string, attributes: Readonly<Record<string, string>>): void {
    if (name === "border") this.borders.push({ border: {}, borderLines: {} });
    const its = this.borders.at(-1);
    if (!its) return;
    if (name === "color" && this.#side)
      its.border[this.#side] =
        colourOf(attributes, this.theme) ?? its.border[this.#side] ?? "#000000";
    if (name !== "diagonal" && !(sides as readonly string[]).includes(name)) return;
    const { style = "none" } = attributes;
    this.#side = name !== "diagonal" && style !== "none" ? (name as Side) : undefined;
    if (this.#side === undefined) return;
    its.border[this.#side] = "#000000";
    const line = borderLines.find((line) => line === style);
    if (line) its.borderLines[this.#side] = line;
  }

  /** The fill of a conditional format is its background, where cells have theirs in the foreground. */
  #openDifference(element: XmlElement): void {
    const { name, attributes } = element;
    if (name === "dxf") {
      this.#difference = element;
      [this.#written, this.#from] = ["", element.start];
      this.differences.push({});
    }
    this.#writeColour(element);
    if (name === "font" || name === "fill" || name === "border") this.#part = name;
    const look = this.differences.at(-1);
    if (!look) return;
    if (this.#part === "font") {
      if (name === "b" && isLeftOn(attributes)) look.bold = true;
      if (name === "i" && isLeftOn(attributes)) look.italic = true;
      const ink = name === "color" ? colourOf(attributes, this.theme) : undefined;
      if (ink !== undefined) look.ink = ink;
    }
    if (this.#part !== "fill") return;
    const colour = colourOf(attributes, this.theme);
    if (colour !== undefined && (name === "bgColor" || (name === "fgColor" && !look.fill)))
      look.fill = colour;
  }

  /** In the difference as it is to be written anew. */
  #writeColour({ name, prefix, attributes, start, innerStart, selfClosing }: XmlElement): void {
    const colour = withoutTheme(attributes, this.theme);
    if (colour === attributes) return;
    const tag = `<${prefix}${name}${attributesXml(colour)}${selfClosing ? "/" : ""}>`;
    this.#written += this.xml.slice(this.#from, start) + tag;
    this.#from = innerStart;
  }

  /** Without the prefix that its file gives all elements; one with elements of extensions says nothing elsewhere. */
  #closeDifference(end: number): void {
    const look = this.differences.at(-1);
    const { prefix = "" } = this.#difference ?? {};
    const text = this.#written + this.xml.slice(this.#from, end);
    const plain = prefix === "" ? text : text.replaceAll(new RegExp(`(</?)${prefix}`, "g"), "$1");
    if (look && !/[<\s/][\w.-]+:[\w.-]+[\s=/>]/.test(plain)) look.xml = plain;
  }

  #cell(name: string, attributes: Readonly<Record<string, string>>): void {
    if (name === "xf") {
      const { border = {}, borderLines = {} } = this.borders[Number(attributes.borderId)] ?? {};
      const format = this.formats.get(Number(attributes.numFmtId));
      this.cells.push({
        ...this.fonts[Number(attributes.fontId)],
        ...this.fills[Number(attributes.fillId)],
        ...(Object.keys(border).length > 0 ? { border } : {}),
        ...(Object.keys(borderLines).length > 0 ? { borderLines } : {}),
        ...(format !== undefined && format !== "General" ? { format } : {}),
      });
    }
    const cell = this.cells.at(-1);
    if (name !== "alignment" || !cell) return;
    const { horizontal, vertical } = attributes;
    if (horizontal === "left" || horizontal === "center" || horizontal === "right")
      cell.align = horizontal;
    if (vertical === "top" || vertical === "center") cell.vertical = vertical;
    if (isOn(attributes.wrapText)) cell.wrap = true;
  }
}

/** What a file's styles hold for us. */
export interface ReadStyles {
  /** The looks of cells, in the order of the file's list. */
  readonly cells: readonly Style[];
  /** What conditional formats put over cells, in the order of theirs. */
  readonly differences: readonly RuleLook[];
}

/** The key by which cells and Book.styles name the format at this place of the file's list. */
export const styleName = (index: number): string => `s${index}`;
export const styleIndex = (name: string): string => name.slice(1);

export async function readStyles(
  file: WorkbookPackage,
  path: string | undefined,
  theme: Theme,
): Promise<ReadStyles> {
  if (path === undefined || !file.has(path)) return { cells: [], differences: [] };
  const text = await file.text(path);
  const lists = new StyleLists(text, theme);
  readShortXml(path, text, lists);
  return lists;
}
