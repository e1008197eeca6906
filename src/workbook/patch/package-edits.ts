import type { WorkbookPackage } from "../package/open-package";
import { relationshipsOf, relationshipsPath } from "../package/relationships";
import { readXml, type XmlElement } from "../xml";
import { escapeAttribute } from "../xml-text";
import { type Replacement, splice } from "./splice";

const contentTypes = "[Content_Types].xml";
const officeTypes = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

const noRelationships =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"/>';

/** Gathers what becomes of the parts of a package; parts that are not named stay as they are. */
export class PackageEdits {
  readonly changes = new Map<string, string | null>();

  constructor(private readonly file: WorkbookPackage) {}

  /** A part as it will be. */
  async text(path: string): Promise<string> {
    return this.changes.get(path) ?? this.file.text(path);
  }

  set(path: string, text: string): void {
    this.changes.set(path, text);
  }

  /** A path that no part has yet. */
  freePath(stem: string, ending: string): string {
    for (let copy = 1; ; copy++) {
      const path = `${stem}${copy}${ending}`;
      if (!this.file.has(path) && !this.changes.has(path)) return path;
    }
  }

  /** Leaves a part out, with what the package and the part that refers to it say of it. */
  async remove(path: string, from: string): Promise<void> {
    this.changes.set(path, null);
    await this.#removeElements(contentTypes, ({ name, attributes }) => {
      const part = (attributes.PartName ?? "").toLowerCase();
      return name === "Override" && part === `/${path.toLowerCase()}`;
    });
    const related = (await relationshipsOf(this.file, from)).filter((its) => its.path === path);
    const ids = new Set(related.map(({ id }) => id));
    await this.#removeElements(
      relationshipsPath(from),
      ({ name, attributes }) => name === "Relationship" && ids.has(attributes.Id ?? ""),
    );
  }

  /** Adds a part that another refers to; answers with the id of the relationship. */
  async add(path: string, text: string, contentType: string, from: string, type: string) {
    this.set(path, text);
    const part = escapeAttribute(`/${path}`);
    await this.appendTo(contentTypes, "Types", (prefix) => {
      return `<${prefix}Override PartName="${part}" ContentType="${contentType}"/>`;
    });
    const related = relationshipsPath(from);
    if (!this.file.has(related) && !this.changes.has(related)) this.set(related, noRelationships);
    const used = await this.#relationshipIds(related);
    let id = "dosewright1";
    for (let copy = 2; used.has(id); copy++) id = `dosewright${copy}`;
    const folder = from.slice(0, from.lastIndexOf("/") + 1);
    const target = escapeAttribute(
      path.startsWith(folder) ? path.slice(folder.length) : `/${path}`,
    );
    await this.appendTo(related, "Relationships", (prefix) => {
      return `<${prefix}Relationship Id="${id}" Type="${officeTypes}/${type}" Target="${target}"/>`;
    });
    return id;
  }

  /** Puts an element at the end of the first element of that name. */
  async appendTo(path: string, into: string, element: (prefix: string) => string): Promise<void> {
    const text = await this.text(path);
    let place: Replacement | undefined;
    let opened: XmlElement | undefined;
    readXml(path, text, {
      open(its) {
        if (its.name === into) opened ??= its;
      },
      close(name, _end, innerEnd) {
        if (name !== into || !opened || place) return;
        const { prefix, start, innerStart, selfClosing } = opened;
        const added = element(prefix);
        const opening = text.slice(start, innerStart).replace(/\/>$/, ">");
        place = selfClosing
          ? { start, end: innerStart, text: `${opening}${added}</${prefix}${into}>` }
          : { start: innerEnd, end: innerEnd, text: added };
      },
    });
    if (place) this.changes.set(path, splice(text, [place]));
  }

  async #relationshipIds(path: string): Promise<ReadonlySet<string>> {
    const ids = new Set<string>();
    readXml(path, await this.text(path), {
      open: ({ attributes: { Id } }) => Id !== undefined && ids.add(Id),
    });
    return ids;
  }

  async #removeElements(path: string, unwanted: (element: XmlElement) => boolean): Promise<void> {
    const text = await this.text(path);
    const removed: Replacement[] = [];
    const open: XmlElement[] = [];
    readXml(path, text, {
      open: (element) => open.push(element),
      close(_name, end) {
        const element = open.pop();
        if (element && unwanted(element)) removed.push({ start: element.start, end, text: "" });
      },
    });
    if (removed.length > 0) this.changes.set(path, splice(text, removed));
  }
}
