/** The filter of a sheet or of a table in their XML: what did not change stays to the letter. */
import { areaAddress } from "../address";
import type { Criterion, Filter } from "../filter";
import { dateParts, FilterReader } from "../read/filter";
import { readXml, type XmlElement } from "../xml";
import { attributesXml } from "../xml-text";
import { type Replacement, splice } from "./splice";

/** What may stand between the cells of a sheet and its filter (ECMA-376 Part 1, 18.3.1.99). */
const beforeFilter = new Set(
  "sheetData sheetCalcPr sheetProtection protectedRanges scenarios".split(" "),
);

interface Span {
  readonly element: XmlElement;
  readonly end: number;
  readonly innerEnd: number;
}

/** What a file says of a criterion inside its column; blank where that cannot be said anew. */
function criterionXml(criterion: Criterion, prefix: string): string {
  const element = (name: string, attributes: Readonly<Record<string, string | undefined>>) =>
    `<${prefix}${name}${attributesXml(attributes)}/>`;
  const list = (name: string, flag: string, isOn: boolean, inner: readonly string[]) =>
    `<${prefix}${name}${isOn ? ` ${flag}="1"` : ""}>${inner.join("")}</${prefix}${name}>`;
  if (criterion.kind === "other") return criterion.xml;
  if (criterion.kind === "conditions") {
    const conditions = criterion.conditions.map(({ operator, value }) =>
      element("customFilter", { ...(operator !== "equal" && { operator }), val: value }),
    );
    return list("customFilters", "and", criterion.all, conditions);
  }
  const texts = criterion.texts.map((val) => element("filter", { val }));
  const dates = criterion.dates.map((parts) => {
    const named = parts.map((part, at) => [dateParts[at] as string, `${part}`]);
    const dateTimeGrouping = dateParts[parts.length - 1];
    return element("dateGroupItem", { ...Object.fromEntries(named), dateTimeGrouping });
  });
  return list("filters", "blank", criterion.blank, [...texts, ...dates]);
}

/** Undefined for a sheet that has none any more; a table whose filter asks for nothing keeps its element. */
export function patchFilter(path: string, xml: string, now: Filter | undefined): string {
  const reader = new FilterReader();
  const open: XmlElement[] = [];
  const columns: Span[] = [];
  let root: XmlElement | undefined;
  let filter: Span | undefined;
  let afterCells: number | undefined;
  readXml(path, xml, {
    open(element) {
      root ??= element;
      open.push(element);
      reader.open(element.name, element.attributes);
    },
    close(name, end, innerEnd) {
      reader.close(name);
      const element = open.pop() as XmlElement;
      const span = { element, end, innerEnd };
      if (open.length === 1 && beforeFilter.has(name)) afterCells = end;
      if (open.length === 1 && name === "autoFilter") filter ??= span;
      if (open.length === 2 && name === "filterColumn" && open[1]?.name === "autoFilter")
        columns.push(span);
    },
  });
  const place = afterCells ?? root?.innerStart ?? 0;
  const [start, end] = filter ? [filter.element.start, filter.end] : [place, place];
  const was = reader.filter();
  const text = now ? filterXml(xml, now, was, filter, columns, root?.prefix ?? "") : "";
  const replacement: Replacement = { start, end, text };
  return splice(xml, [replacement]);
}

function filterXml(
  xml: string,
  now: Filter,
  was: Filter | undefined,
  filter: Span | undefined,
  columns: readonly Span[],
  prefix: string,
): string {
  const tag = `${prefix}autoFilter`;
  const kept = columns.flatMap((span) => {
    const { colId, ...attributes } = span.element.attributes;
    const column = Number(colId);
    const of = (one: Filter | undefined) =>
      one?.columns.find((its) => its.column === column)?.criterion;
    const wanted = of(now);
    const whole = xml.slice(span.element.start, span.end);
    if (JSON.stringify(of(was)) === JSON.stringify(wanted)) return [{ column, text: whole }];
    const inner = wanted ? criterionXml(wanted, prefix) : "";
    if (inner === "" && Object.keys(attributes).length === 0) return [];
    return [{ column, text: columnXml(prefix, { colId, ...attributes }, inner) }];
  });
  const ids = columns.map(({ element }) => Number(element.attributes.colId));
  const fresh = now.columns.flatMap(({ column, criterion }) => {
    const inner = ids.includes(column) ? "" : criterionXml(criterion, prefix);
    return inner === "" ? [] : [{ column, text: columnXml(prefix, { colId: `${column}` }, inner) }];
  });
  const all = [...kept, ...fresh].sort((one, other) => one.column - other.column);
  const behind = Math.max(filter?.element.innerStart ?? 0, ...columns.map((span) => span.end));
  const rest = filter && !filter.element.selfClosing ? xml.slice(behind, filter.innerEnd) : "";
  const attributes = attributesXml({ ...filter?.element.attributes, ref: areaAddress(now.area) });
  const inner = all.map(({ text }) => text).join("") + rest;
  return inner === "" ? `<${tag}${attributes}/>` : `<${tag}${attributes}>${inner}</${tag}>`;
}

const columnXml = (
  prefix: string,
  attributes: Readonly<Record<string, string | undefined>>,
  inner: string,
) =>
  inner === ""
    ? `<${prefix}filterColumn${attributesXml(attributes)}/>`
    : `<${prefix}filterColumn${attributesXml(attributes)}>${inner}</${prefix}filterColumn>`;
