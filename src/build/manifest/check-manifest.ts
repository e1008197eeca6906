import { ATTRIBUTES, byPath, CHILDREN, LONGEST, REFERENCES } from "./published-order";
import { type Element, everyElement, readElements } from "./read-elements";

const GUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const VERSION = /^\d{1,5}(\.\d{1,5}){1,3}$/;
const NAMESPACE = /^[A-Z][A-Z0-9_.]{0,31}$/;
const LONGEST_REFERENCE = 32;
const RIBBON_ICON_SIZES = ["16", "32", "80"];

/** Gives the bytes behind an address of the add-in, or undefined where nothing is served. */
export type ReadServed = (url: string) => Uint8Array | undefined;

/** Everything that would keep a manifest from loading, each in a line; none is a sound manifest. */
export function manifestFaults(xml: string, read: ReadServed): string[] {
  let root: Element;
  try {
    root = readElements(xml);
  } catch (problem) {
    return [`not well-formed: ${(problem as Error).message}`];
  }
  if (root.name !== "OfficeApp") return [`the root is ${root.name}, not OfficeApp`];
  const elements = everyElement(root);
  return [
    ...elements.flatMap(orderFaults),
    ...elements.flatMap(attributeFaults),
    ...elements.flatMap(lengthFaults),
    ...headFaults(elements),
    ...referenceFaults(elements),
    ...runtimeFaults(elements),
    ...addressFaults(elements),
    ...iconFaults(elements, read),
  ];
}

/** Child elements against the published order: what must stand, what may, in this order and no other. */
function orderFaults({ name, path, children }: Element): string[] {
  const allowed = (byPath(CHILDREN, path) ?? "").split(" ").filter((one) => one !== "");
  const found = children.map((child) => child.name);
  const faults: string[] = [];
  let at = 0;
  for (const one of allowed) {
    const [, wanted, mark] = /^(.*?)([?+*]?)$/.exec(one) as unknown as [string, string, string];
    let times = 0;
    while (found[at] === wanted && (times === 0 || mark === "+" || mark === "*")) {
      at += 1;
      times += 1;
    }
    if (times === 0 && mark !== "?" && mark !== "*") faults.push(`${path} lacks ${wanted} there`);
  }
  if (at < found.length) faults.push(`${found[at]} is out of place in ${name} (${path})`);
  return faults;
}

function attributeFaults({ path, attributes }: Element): string[] {
  const wanted = (byPath(ATTRIBUTES, path) ?? "").split(" ").filter((one) => one !== "");
  return wanted.flatMap((name) =>
    (attributes[name] ?? "").trim() === "" ? [`${path} lacks the attribute ${name}`] : [],
  );
}

function lengthFaults({ path, attributes }: Element): string[] {
  const longest = byPath(LONGEST, path);
  const length = attributes.DefaultValue?.length ?? 0;
  return longest !== undefined && length > longest
    ? [`${path} is ${length} characters long; at most ${longest}`]
    : [];
}

function headFaults(elements: readonly Element[]): string[] {
  const text = (path: string) => elements.find((one) => one.path === path)?.text.trim() ?? "";
  const faults: string[] = [];
  const [root] = elements;
  const overrides = elements.find(({ name }) => name === "VersionOverrides");
  if (root?.attributes["xsi:type"] !== "TaskPaneApp") faults.push("OfficeApp is no TaskPaneApp");
  if (overrides !== undefined && overrides.attributes["xsi:type"] !== "VersionOverridesV1_0")
    faults.push("VersionOverrides is no VersionOverridesV1_0");
  if (!GUID.test(text("OfficeApp/Id"))) faults.push("Id is no GUID");
  if (!VERSION.test(text("OfficeApp/Version"))) faults.push("Version is not like 1.2.3.0");
  if (text("OfficeApp/ProviderName") === "") faults.push("ProviderName is empty");
  if (!/^[a-z]{2}-[A-Z]{2}$/.test(text("OfficeApp/DefaultLocale")))
    faults.push("DefaultLocale is not like en-GB");
  if (text("OfficeApp/Permissions") !== "ReadWriteDocument")
    faults.push("Permissions are not ReadWriteDocument");
  for (const { path, attributes } of elements) {
    for (const value of Object.values(attributes)) {
      if (/\{\w*\}/.test(value)) faults.push(`${path} holds a placeholder: ${value}`);
    }
  }
  return faults;
}

/** Every resid names a resource of the right kind, every resource is named, and no id stands twice. */
function referenceFaults(elements: readonly Element[]): string[] {
  const faults: string[] = [];
  const lists = elements.filter(({ path }) => /\/Resources\/bt:\w+$/.test(path));
  const defined = new Map<string, string>();
  for (const { name: list, children } of lists) {
    for (const { attributes } of children) {
      const id = attributes.id ?? "";
      if (defined.has(id)) faults.push(`the resource ${id} is defined twice`);
      if (id.length > LONGEST_REFERENCE) faults.push(`the resource id ${id} is too long`);
      defined.set(id, list);
    }
  }
  const used = new Set<string>();
  for (const { path, attributes } of elements) {
    const { resid } = attributes;
    const list = byPath(REFERENCES, path);
    if (resid === undefined) {
      if (list !== undefined) faults.push(`${path} has no resid`);
      continue;
    }
    used.add(resid);
    if (!defined.has(resid)) faults.push(`${path}: no resource is named ${resid}`);
    else if (defined.get(resid) !== list) faults.push(`${path}: ${resid} is not among the ${list}`);
  }
  for (const id of defined.keys()) {
    if (!used.has(id)) faults.push(`the resource ${id} is not used`);
  }
  return faults;
}

/** A shared runtime loads only if page, pane, commands and runtime are one address. */
function runtimeFaults(elements: readonly Element[]): string[] {
  const faults: string[] = [];
  const runtime = elements.find(({ name }) => name === "Runtime");
  if (runtime?.attributes.lifetime !== "long") faults.push("the runtime is not long-lived");
  for (const { path, attributes } of elements) {
    const shares = /(Page|Action)\/SourceLocation$|FunctionFile$/.test(path);
    if (shares && attributes.resid !== runtime?.attributes.resid)
      faults.push(`${path} is not the page of the runtime`);
    if (/\/TaskpaneId$/.test(path)) faults.push("a shared runtime takes no TaskpaneId");
  }
  const pane = elements.find(({ path }) => path === "OfficeApp/DefaultSettings/SourceLocation");
  if (pane?.attributes.DefaultValue !== resource(elements, runtime?.attributes.resid))
    faults.push("the default page is not the page of the runtime");
  const shared = elements.some(
    ({ name, attributes }) => name === "Set" && attributes.Name === "SharedRuntime",
  );
  if (!shared) faults.push("the requirement SharedRuntime is missing");
  const namespace = elements.find(({ name }) => name === "Namespace")?.attributes.resid;
  if (!NAMESPACE.test(resource(elements, namespace) ?? ""))
    faults.push("the namespace is not of 1 to 32 capitals, digits, underscores and dots");
  const ids = elements.filter(({ name }) => name === "Group" || name === "Control");
  if (new Set(ids.map(({ attributes }) => attributes.id)).size < ids.length)
    faults.push("a group or a control has the id of another");
  return faults;
}

const resource = (elements: readonly Element[], id: string | undefined) =>
  elements.find(({ attributes }) => id !== undefined && attributes.id === id)?.attributes
    .DefaultValue;

const ADDRESS = /(Url|SourceLocation|bt:Url|bt:Images\/bt:Image)$/;

function addressFaults(elements: readonly Element[]): string[] {
  return elements.flatMap(({ path, attributes: { DefaultValue: url } }) => {
    if (url === undefined || !ADDRESS.test(path)) return [];
    return URL.canParse(url) && new URL(url).protocol === "https:"
      ? []
      : [`${path} is no https address: ${url}`];
  });
}

/** The icons as they are served: square, and as large as the manifest says. */
function iconFaults(elements: readonly Element[], read: ReadServed): string[] {
  const faults: string[] = [];
  const expect = (path: string, url: string | undefined, size: number) => {
    const bytes = url === undefined ? undefined : read(url);
    if (bytes === undefined) faults.push(`${path}: no file at ${url}`);
    else if (pngSize(bytes) !== `${size} × ${size}`)
      faults.push(`${path}: ${url} is ${pngSize(bytes)}, not ${size} × ${size}`);
  };
  for (const { name, path, attributes, children } of elements) {
    if (name === "IconUrl") expect(path, attributes.DefaultValue, 32);
    if (name === "HighResolutionIconUrl") expect(path, attributes.DefaultValue, 64);
    if (name !== "Icon") continue;
    const sizes = children.map((image) => image.attributes.size);
    for (const size of RIBBON_ICON_SIZES) {
      if (!sizes.includes(size)) faults.push(`${path} lacks the size ${size}`);
    }
    for (const image of children) {
      const { resid, size } = image.attributes;
      expect(image.path, resource(elements, resid), Number(size));
    }
  }
  return faults;
}

/** Width and height from the head of a PNG file (PNG specification, 5.2 and 11.2.1). */
function pngSize(bytes: Uint8Array): string {
  const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  if (bytes.length < 24 || signature.some((byte, i) => bytes[i] !== byte)) return "no PNG";
  const head = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return `${head.getUint32(16)} × ${head.getUint32(20)}`;
}
