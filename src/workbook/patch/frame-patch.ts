/** What stands around the cells of a sheet: its columns, what stays in view, merged cells. */
import { addressOf, areaAddress } from "../address";
import { readXml, type XmlElement, type XmlHandlers } from "../xml";
import { attributesXml } from "../xml-text";
import type { LookOf } from "./edits";
import { patchFilter } from "./filter-xml";
import type { LayoutEdits } from "./layout-edits";
import { type ColumnRun, editedColumns } from "./lines";
import { type Replacement, splice } from "./splice";

/** What may stand between the cells and the merged ones (ECMA-376 Part 1, 18.3.1.99). */
const beforeMerged = new Set(
  "sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews".split(
    " ",
  ),
);

/** In characters, where the file does not say it. */
const USUAL_WIDTH = "9.140625";

interface Span {
  readonly element: XmlElement;
  readonly end: number;
}

class FramePatch implements XmlHandlers {
  readonly #open: XmlElement[] = [];
  readonly #found = new Map<string, Span>();
  readonly #columns: ColumnRun[] = [];
  /** Of the first view: its panes, and what is selected in them. */
  readonly #panes: Span[] = [];
  #afterCells = 0;

  open(element: XmlElement): void {
    this.#open.push(element);
    if (element.name !== "col") return;
    const { min, max, ...attributes } = element.attributes;
    this.#columns.push({ first: Number(min) - 1, last: Number(max) - 1, attributes });
  }

  close(name: string, end: number): void {
    const element = this.#open.pop();
    if (!element) return;
    const span = { element, end };
    const ofPane = name === "pane" || (name === "selection" && element.attributes.pane);
    if (ofPane && !this.#found.has("sheetView")) this.#panes.push(span);
    if (this.#open.length > 2) return;
    if (!this.#found.has(name)) this.#found.set(name, span);
    if (this.#open.length === 1 && beforeMerged.has(name)) this.#afterCells = end;
  }

  constructor(private readonly lookOf: LookOf | undefined) {}

  replacements({ columns, frozen, merged }: LayoutEdits): Replacement[] {
    return [
      ...(frozen ? this.#freeze(frozen) : []),
      ...(columns.size > 0 ? [this.#columnsXml(columns)] : []),
      ...(merged ? [this.#mergedXml(merged)] : []),
    ];
  }

  get #prefix(): string {
    return this.#found.get("sheetData")?.element.prefix ?? "";
  }

  /** Where the first of these elements begins. */
  #before(...names: string[]): number {
    const spans = names.flatMap((name) => this.#found.get(name) ?? []);
    return Math.min(...spans.map(({ element }) => element.start));
  }

  #instead(name: string, at: number, text: string): Replacement {
    const span = this.#found.get(name);
    return span ? { start: span.element.start, end: span.end, text } : { start: at, end: at, text };
  }

  #columnsXml(edits: LayoutEdits["columns"]): Replacement {
    const usual = this.#found.get("sheetFormatPr")?.element.attributes.defaultColWidth;
    const writing = { usualWidth: usual ?? USUAL_WIDTH, lookOf: this.lookOf };
    const runs = editedColumns(this.#columns, edits, writing).map(
      ({ first, last, attributes }) =>
        `<${this.#prefix}col${attributesXml({ min: `${first + 1}`, max: `${last + 1}`, ...attributes })}/>`,
    );
    const tag = `${this.#prefix}cols`;
    return this.#instead("cols", this.#before("sheetData"), `<${tag}>${runs.join("")}</${tag}>`);
  }

  #mergedXml(merged: NonNullable<LayoutEdits["merged"]>): Replacement {
    const tag = `${this.#prefix}mergeCell`;
    const cells = merged.map((area) => `<${tag} ref="${areaAddress(area)}"/>`).join("");
    const text = cells === "" ? "" : `<${tag}s count="${merged.length}">${cells}</${tag}s>`;
    return this.#instead("mergeCells", this.#afterCells, text);
  }

  #freeze({ rows, columns }: NonNullable<LayoutEdits["frozen"]>): Replacement[] {
    const prefix = this.#prefix;
    const pane =
      rows + columns === 0
        ? ""
        : `<${prefix}pane${attributesXml({
            xSplit: columns > 0 ? `${columns}` : undefined,
            ySplit: rows > 0 ? `${rows}` : undefined,
            topLeftCell: addressOf(rows, columns),
            activePane: rows === 0 ? "topRight" : columns === 0 ? "bottomLeft" : "bottomRight",
            state: "frozen",
          })}/>`;
    const gone = this.#panes.map(({ element, end }) => ({ start: element.start, end, text: "" }));
    const view = this.#found.get("sheetView")?.element;
    if (!view) {
      const at = this.#before("sheetFormatPr", "cols", "sheetData");
      const text = `<${prefix}sheetViews><${prefix}sheetView workbookViewId="0">${pane}</${prefix}sheetView></${prefix}sheetViews>`;
      return [this.#instead("sheetViews", at, text)];
    }
    const { start, innerStart, selfClosing, attributes } = view;
    if (!selfClosing) return [{ start: innerStart, end: innerStart, text: pane }, ...gone];
    const tag = `${prefix}sheetView`;
    return [
      { start, end: innerStart, text: `<${tag}${attributesXml(attributes)}>${pane}</${tag}>` },
    ];
  }
}

/** A sheet's XML after the edits around its cells. */
export function patchFrame(path: string, xml: string, edits: LayoutEdits, lookOf?: LookOf): string {
  const patch = new FramePatch(lookOf);
  readXml(path, xml, patch);
  const framed = splice(xml, patch.replacements(edits));
  const { filter } = edits;
  return filter === undefined ? framed : patchFilter(path, framed, filter ?? undefined);
}

/** The workbook's own part, its sheets shown or hidden; one that is hidden is not the one in front. */
export function patchSheetStates(
  path: string,
  xml: string,
  edits: ReadonlyMap<string, LayoutEdits>,
): string {
  const hidden: boolean[] = [];
  const replacements: Replacement[] = [];
  let view: XmlElement | undefined;
  const rewrite = (element: XmlElement, changes: Readonly<Record<string, string | undefined>>) => {
    const { prefix, name, attributes, start, innerStart, selfClosing } = element;
    const opening = `<${prefix}${name}${attributesXml({ ...attributes, ...changes })}`;
    replacements.push({ start, end: innerStart, text: `${opening}${selfClosing ? "/>" : ">"}` });
  };
  readXml(path, xml, {
    open(element) {
      const { name, attributes } = element;
      if (name === "workbookView") view ??= element;
      if (name !== "sheet") return;
      const now = edits.get(attributes.name ?? "")?.hidden;
      hidden.push(now ?? (attributes.state ?? "visible") !== "visible");
      if (now !== undefined) rewrite(element, { state: now ? "hidden" : undefined });
    },
  });
  if (view && hidden[Number(view.attributes.activeTab ?? 0)])
    rewrite(view, { activeTab: `${hidden.indexOf(false)}` });
  return splice(xml, replacements);
}
