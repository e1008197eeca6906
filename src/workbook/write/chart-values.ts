import { parseArea } from "../address";
import { type Book, cellAt, isError, type Value } from "../book";
import { sheetOf } from "../formula/regions";
import { numberText } from "../patch/cell-xml";
import { escapeText } from "../xml-text";

/** The values of the cells that a chart names: "'Mill log'!$E$4:$E$7", row by row. */
function valuesAt(book: Book, reference: string): Value[] {
  const mark = reference.lastIndexOf("!") + 1;
  const name = sheetOf(reference.slice(0, mark));
  const sheet = book.sheets.find((its) => its.name === name);
  const { row, column, rows, columns } = parseArea(reference.slice(mark));
  return Array.from({ length: rows * columns }, (_, at) => {
    const place = [row + Math.floor(at / columns), column + (at % columns)] as const;
    return (sheet && cellAt(sheet, ...place)?.value) ?? null;
  });
}

function point(value: Value, at: number): string {
  if (value === null || isError(value)) return "";
  const text = typeof value === "number" ? numberText(value) : escapeText(`${value}`);
  return `<c:pt idx="${at}"><c:v>${text}</c:v></c:pt>`;
}

/**
 * A chart's own copy of the values that it draws, which is what is seen before a spreadsheet has
 * drawn it anew. The package leaves the first value of every array formula out of it.
 */
export function withChartValues(book: Book, chart: string): string {
  const cache = /<c:(num|str)Ref><c:f>([^<]*)<\/c:f><c:\1Cache>.*?<\/c:\1Cache><\/c:\1Ref>/gs;
  return chart.replace(cache, (_, _kind, escaped: string) => {
    const reference = escaped.replaceAll("&apos;", "'").replaceAll("&amp;", "&");
    const values = valuesAt(book, reference);
    const kind = values.some((value) => typeof value === "string") ? "str" : "num";
    const format = kind === "num" ? "<c:formatCode>General</c:formatCode>" : "";
    const points = `<c:ptCount val="${values.length}"/>${values.map(point).join("")}`;
    const inner = `<c:f>${escaped}</c:f><c:${kind}Cache>${format}${points}</c:${kind}Cache>`;
    return `<c:${kind}Ref>${inner}</c:${kind}Ref>`;
  });
}
