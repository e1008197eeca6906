import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import type { Book } from "../book";
import type { FunctionNames } from "../formula/stored-form";
import { palette } from "../layout/looks";
import type { PlannedSheet } from "../layout/planned";
import type { LookOf } from "../patch/edits";
import { patchFilter } from "../patch/filter-xml";
import { StyleSheet } from "../patch/style-sheet";
import type { RuleLook } from "../sheet-rules";
import { withChartValues } from "./chart-values";
import { withAuthors } from "./comments";
import { extensionXml, rulesXml } from "./rules-xml";
import { withUnsaid } from "./unsaid";

/** Every build says the same, so that two of them are the same bytes. */
const created = "2025-01-01T00:00:00Z";
/** The first date that a zip archive can hold. */
const entryDate = new Date(1980, 0, 1);

const STYLES = "xl/styles.xml";

const argb = (hex: string) => `FF${hex.slice(1).toUpperCase()}`;

function differentialStyle({ xml, bold, italic, ink, fill }: RuleLook): string {
  if (xml !== undefined) return xml;
  const colour = ink === undefined ? "" : `<color rgb="${argb(ink)}"/>`;
  const font = `${bold ? "<b/>" : ""}${italic ? "<i/>" : ""}${colour}`;
  const painted =
    fill === undefined
      ? ""
      : `<fill><patternFill><bgColor rgb="${argb(fill)}"/></patternFill></fill>`;
  return `<dxf>${font === "" ? "" : `<font>${font}</font>`}${painted}</dxf>`;
}

/** Adds the looks of rules after the styles that tables brought along; says where they start. */
function withRuleStyles(styles: string, looks: readonly string[]): { text: string; first: number } {
  const found = /<dxfs count="(\d+)"\s*(?:\/>|>(.*?)<\/dxfs>)/s.exec(styles);
  if (!found)
    throw new Error("The styles of the new workbook have no place for conditional formats.");
  const first = Number(found[1]);
  const list = `<dxfs count="${first + looks.length}">${found[2] ?? ""}${looks.join("")}</dxfs>`;
  return { text: styles.replace(found[0], () => list), first };
}

/** Puts conditional formats and validations where the order of elements wants them. */
function withRules(xml: string, rules: string, extension: string): string {
  if (rules === "") return xml;
  const next = /<(?:hyperlinks|printOptions|pageMargins)[ >/]/.exec(xml);
  if (!next) throw new Error("The new sheet has no place for conditional formats.");
  const end = xml.lastIndexOf("</worksheet>");
  return xml.slice(0, next.index) + rules + xml.slice(next.index, end) + extension + xml.slice(end);
}

/** Cached values are shown as they are saved: nothing asks for a recalculation on opening. */
const withoutRecalculation = (workbook: string): string =>
  workbook.replace(/<calcPr [^>]*\/>/, '<calcPr calcId="191029"/>');

const withFixedDates = (core: string): string =>
  core.replace(/(<dcterms:(created|modified)[^>]*>)[^<]*/g, `$1${created}`);

const line = (hex: string) =>
  `<c:spPr><a:ln w="9525"><a:solidFill><a:srgbClr val="${hex.slice(1)}"/></a:solidFill></a:ln></c:spPr>`;

/** Bars stand in the order of their cells, the first on top, and their scale below the last. */
function topDown(chart: string): string {
  if (!chart.includes('<c:barDir val="bar"/>')) return chart;
  return chart
    .replace(/(<c:catAx>.*?<c:orientation val=)"minMax"/s, '$1"maxMin"')
    .replace(/(<c:valAx>.*?<c:tickLblPos val=)"nextTo"/s, '$1"high"')
    .replace(/(<c:valAx>.*?<c:crosses val=)"autoZero"/s, '$1"max"');
}

/** The order that the schema wants (the package puts markers first), axes that say they are there, labels at the edge also where values go below 0, pale lines. */
const completed = (chart: string): string =>
  topDown(chart)
    .replaceAll(
      "<c:majorGridlines/>",
      `<c:majorGridlines>${line(palette.gridline)}</c:majorGridlines>`,
    )
    .replace(/(<c:marker>.*?<\/c:marker>)(<c:spPr>.*?<\/c:spPr>)/gs, "$2$1")
    .replaceAll('<c:tickLblPos val="nextTo"/>', '<c:tickLblPos val="low"/>')
    .replaceAll("</c:scaling><c:axPos", '</c:scaling><c:delete val="0"/><c:axPos');

function withTableFilter(path: string, xml: string, { tables }: Book): string {
  const filter = tables.find(({ name }) => xml.includes(` displayName="${name}"`))?.filter;
  return filter ? patchFilter(path, xml, filter) : xml;
}

/** Completes what the package wrote: values, filters, rules, validations, fixed dates, the same order of entries. */
export function finish(
  bytes: Uint8Array,
  book: Book,
  sheets: readonly PlannedSheet[],
  names: FunctionNames,
): Uint8Array {
  const parts = unzipSync(bytes);
  const edit = (path: string, change: (text: string) => string) => {
    const part = parts[path];
    if (!part) throw new Error(`The new workbook has no ${path}.`);
    parts[path] = strToU8(change(strFromU8(part)));
  };
  edit("xl/workbook.xml", withoutRecalculation);
  edit("docProps/core.xml", withFixedDates);
  for (const path of Object.keys(parts))
    if (path.startsWith("xl/charts/"))
      edit(path, (chart) => withChartValues(book, completed(chart)));
  // The package numbers charts as they were put in.
  for (const [at, { drawsHidden }] of sheets.flatMap(({ charts }) => charts).entries())
    if (drawsHidden)
      edit(`xl/charts/chart${at + 1}.xml`, (chart) =>
        chart.replace('<c:plotVisOnly val="1"/>', '<c:plotVisOnly val="0"/>'),
      );
  edit(STYLES, (text) => {
    const styleSheet = new StyleSheet(STYLES, text);
    const lookOf: LookOf = (at, look) => styleSheet.lookOf(at, look);
    sheets.forEach((sheet, index) => {
      const path = `xl/worksheets/sheet${index + 1}.xml`;
      edit(path, (xml) => withUnsaid(path, xml, sheet, { names, styles: book.styles, lookOf }));
    });
    return styleSheet.text();
  });
  sheets
    .filter(({ comments }) => comments.length > 0)
    .forEach(({ comments }, index) => {
      edit(`xl/comments${index + 1}.xml`, (xml) => withAuthors(xml, comments));
    });
  for (const path of Object.keys(parts))
    if (path.startsWith("xl/tables/")) edit(path, (table) => withTableFilter(path, table, book));
  const looks = [
    ...new Set(sheets.flatMap(({ formats }) => formats.map(({ look }) => differentialStyle(look)))),
  ];
  let first = 0;
  if (looks.length > 0)
    edit(STYLES, (text) => {
      const styles = withRuleStyles(text, looks);
      first = styles.first;
      return styles.text;
    });
  const styleOf = (look: RuleLook) => first + looks.indexOf(differentialStyle(look));
  sheets.forEach((sheet, index) => {
    const rules = rulesXml(sheet, styleOf, names);
    edit(`xl/worksheets/sheet${index + 1}.xml`, (text) =>
      withRules(text, rules, extensionXml(sheet)),
    );
  });
  const entries: Zippable = {};
  for (const path of Object.keys(parts).sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1)))
    entries[path] = [parts[path] as Uint8Array, { mtime: entryDate, level: 6 }];
  return zipSync(entries);
}

/** Readers look for the list of content types first. */
const rank = (path: string): number => (path === "[Content_Types].xml" ? 0 : 1);
