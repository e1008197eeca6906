import { SaxesParser } from "saxes";

/** An element of an XML file as it was written. */
export interface Element {
  readonly name: string;
  /** From the root: OfficeApp/Hosts/Host. */
  readonly path: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

interface OpenElement extends Element {
  children: Element[];
  text: string;
}

/** The root element of a well-formed file; throws with line and column where it is not. */
export function readElements(xml: string): Element {
  const parser = new SaxesParser({ xmlns: false });
  const open: OpenElement[] = [];
  let root: Element | undefined;
  parser.on("error", (problem) => {
    throw problem;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const parent = open.at(-1);
    const path = parent === undefined ? name : `${parent.path}/${name}`;
    open.push({ name, path, attributes, children: [], text: "" });
  });
  parser.on("text", (text) => {
    const parent = open.at(-1);
    if (parent !== undefined) parent.text += text;
  });
  parser.on("closetag", () => {
    const element = open.pop() as OpenElement;
    const parent = open.at(-1);
    if (parent === undefined) root = element;
    else parent.children.push(element);
  });
  parser.write(xml).close();
  return root as Element;
}

/** The element and all below it. */
export function everyElement(element: Element): Element[] {
  return [element, ...element.children.flatMap(everyElement)];
}
