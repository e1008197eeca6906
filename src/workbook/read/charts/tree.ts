import { xmlReader } from "../../xml";

/** An element with all that is in it. */
export interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
  readonly text: string;
}

interface Growing extends Node {
  readonly children: Growing[];
  text: string;
}

/** A chart of people's own has some hundred elements, when its copies of values are left out. */
const MOST_ELEMENTS = 200_000;

/** A short part as a tree; elements of these names are left out with all that is in them. */
export function treeOf(part: string, text: string, without: ReadonlySet<string>): Node {
  const root: Growing = { name: "", attributes: {}, children: [], text: "" };
  const way: Growing[] = [root];
  let skipped = 0;
  const reader = xmlReader(
    part,
    {
      open({ name, attributes }) {
        if (skipped > 0 || without.has(name)) {
          skipped++;
          return;
        }
        const node: Growing = { name, attributes, children: [], text: "" };
        way.at(-1)?.children.push(node);
        way.push(node);
      },
      close() {
        if (skipped > 0) skipped--;
        else way.pop();
      },
      text(run) {
        const node = way.at(-1);
        if (skipped === 0 && node) node.text += run;
      },
    },
    MOST_ELEMENTS,
  );
  reader.write(text);
  reader.close();
  return root;
}

export const childrenOf = (node: Node | undefined, name: string): readonly Node[] =>
  node?.children.filter((child) => child.name === name) ?? [];

/** The first element at the end of a way through the tree. */
export function at(node: Node | undefined, ...names: readonly string[]): Node | undefined {
  let here = node;
  for (const name of names) here = here?.children.find((child) => child.name === name);
  return here;
}

/** What the attribute "val" says, in which charts keep most of what they say. */
export const valueAt = (node: Node | undefined, ...names: readonly string[]) =>
  at(node, ...names)?.attributes.val;

/** Every element of a name, however deep. */
export function* within(node: Node | undefined, name: string): Generator<Node> {
  for (const child of node?.children ?? []) {
    if (child.name === name) yield child;
    yield* within(child, name);
  }
}
