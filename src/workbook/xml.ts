import { SaxesParser, type SaxesTagPlain } from "saxes";
import { WorkbookRefusal } from "./workbook-refusal";

/** An element without its prefix: some programs write every sheet as <x:worksheet>. */
export interface XmlElement {
  readonly name: string;
  readonly prefix: string;
  /** By name with prefix; the object has no prototype. */
  readonly attributes: Readonly<Record<string, string>>;
  /** Where its "<" stands in the text. */
  readonly start: number;
  /** Where the ">" of its opening tag ends. */
  readonly innerStart: number;
  readonly selfClosing: boolean;
}

export interface XmlHandlers {
  open?(element: XmlElement): void;
  /** `end` is where the ">" of its closing tag ends, `innerEnd` where the "<" of that tag stands. */
  close?(name: string, end: number, innerEnd: number): void;
  text?(text: string): void;
}

export interface XmlReader {
  write(chunk: string): void;
  close(): void;
}

/** No part of a workbook nests deeper than a few elements. */
const deepest = 256;

/** Formats, names, relations: only the cells of a sheet and their texts may be more. */
const longestList = 1_000_000;

const localName = (name: string) => name.slice(name.indexOf(":") + 1);

/** Reads XML as it comes. Document types are refused: no workbook has one, and entities hide in them. */
export function xmlReader(
  part: string,
  handlers: XmlHandlers,
  mostElements = Number.POSITIVE_INFINITY,
): XmlReader {
  const damaged = (why: string) => new WorkbookRefusal(`The file is damaged: ${part} ${why}.`);
  const parser = new SaxesParser({ position: true, xmlns: false });
  let depth = 0;
  let elements = 0;
  let start = 0;
  parser.on("xmldecl", ({ encoding }) => {
    if (encoding !== undefined && !/^utf-8$/i.test(encoding))
      throw new WorkbookRefusal(
        `The file's ${part} is encoded as ${encoding}; only UTF-8 is read.`,
      );
  });
  parser.on("doctype", () => {
    throw new WorkbookRefusal(
      `The file's ${part} declares a document type, which no workbook does.`,
    );
  });
  parser.on("error", () => {
    throw damaged("is not well-formed XML");
  });
  parser.on("opentagstart", ({ name }) => {
    start = parser.position - name.length - 2;
    if (++depth > deepest) throw damaged("nests too deeply");
    if (++elements > mostElements)
      throw new WorkbookRefusal(
        `The file's ${part} holds more than ${mostElements.toLocaleString("en")} elements, which is the most that is read.`,
      );
  });
  parser.on("opentag", (tag: SaxesTagPlain) => {
    const name = localName(tag.name);
    const prefix = tag.name.slice(0, tag.name.length - name.length);
    const { attributes, isSelfClosing: selfClosing } = tag;
    handlers.open?.({ name, prefix, attributes, start, innerStart: parser.position, selfClosing });
  });
  parser.on("closetag", (tag: SaxesTagPlain) => {
    depth--;
    const end = parser.position;
    const innerEnd = tag.isSelfClosing ? end : end - tag.name.length - 3;
    handlers.close?.(localName(tag.name), end, innerEnd);
  });
  if (handlers.text) {
    parser.on("text", (run) => handlers.text?.(run));
    parser.on("cdata", (run) => handlers.text?.(run));
  }
  return {
    write: (chunk) => {
      parser.write(chunk);
    },
    close: () => {
      parser.close();
    },
  };
}

/** Reads a whole text; the offsets are those of the text. */
export function readXml(part: string, text: string, handlers: XmlHandlers): void {
  const reader = xmlReader(part, handlers);
  reader.write(text);
  reader.close();
}

/** Reads a part that no workbook makes long: what it lists is held in memory. */
export function readShortXml(part: string, text: string, handlers: XmlHandlers): void {
  const reader = xmlReader(part, handlers, longestList);
  reader.write(text);
  reader.close();
}

/** The value of an attribute whose prefix is the writer's choice: r:id. */
export function prefixed(attributes: Readonly<Record<string, string>>, name: string) {
  const found = Object.keys(attributes).find((key) => key.endsWith(`:${name}`));
  return found === undefined ? undefined : attributes[found];
}

/** Whether a flag is set, as files write it. */
export const isOn = (flag: string | undefined) => flag === "1" || flag === "true";
