import { NAMESPACE } from "../../help/reference";
import { type Book, isError, type Sheet, type Style } from "../../workbook/book";
import { cellsOf } from "../../workbook/cells-within";
import { joined, tokensOf } from "../../workbook/formula/tokens";
import { typedValue } from "./cells";
import { addressLists, styleAreas } from "./style-areas";

/** Puts the values that were typed; formulas follow once every sheet, table and name is there. */
export function writeValues(worksheet: Excel.Worksheet, sheet: Sheet): void {
  for (const [row, cells] of Object.entries(sheet.cells)) {
    for (const run of valueRuns(cells)) {
      worksheet.getRangeByIndexes(Number(row), run.column, 1, run.values.length).values = [
        run.values,
      ];
    }
  }
}

interface ValueRun {
  readonly column: number;
  readonly values: (string | number | boolean)[];
}

/** Neighbours that hold a typed value, so that a row is a request or two and no blank is written. */
function valueRuns(cells: Sheet["cells"][number]): ValueRun[] {
  const runs: ValueRun[] = [];
  for (const [key, { value, formula, spilled }] of Object.entries(cells)) {
    if (value === null || isError(value) || formula !== undefined || spilled) continue;
    const column = Number(key);
    const last = runs.at(-1);
    if (last !== undefined && last.column + last.values.length === column) {
      last.values.push(typedValue(value));
    } else {
      runs.push({ column, values: [typedValue(value)] });
    }
  }
  return runs;
}

/** Each formula goes into its own cell, so that it may spill. */
export function writeFormulas(worksheet: Excel.Worksheet, sheet: Sheet, namespace: string): void {
  for (const [row, column, { formula }] of cellsOf(sheet)) {
    if (formula === undefined) continue;
    const text = `=${withNamespace(formula, namespace)}`;
    worksheet.getCell(row, column).formulas = [[text]];
  }
}

/** A formula of ours under the namespace that runs here. */
export function withNamespace(formula: string, namespace: string): string {
  if (namespace === NAMESPACE) return formula;
  const ours = new RegExp(`^${NAMESPACE}(?=\\.)`, "i");
  return joined(
    tokensOf(formula).map((token) =>
      token.kind === "function" ? { ...token, text: token.text.replace(ours, namespace) } : token,
    ),
  );
}

export function writeStyles(worksheet: Excel.Worksheet, sheet: Sheet, { styles }: Book): void {
  for (const [key, areas] of styleAreas(sheet)) {
    const style = styles[key];
    if (style === undefined) continue;
    for (const list of addressLists(areas)) applyStyle(worksheet.getRanges(list).format, style);
    if (style.format === undefined) continue;
    for (const { row, column, rows, columns } of areas) {
      const range = worksheet.getRangeByIndexes(row, column, rows, columns);
      // One format stands for all cells of the range, which the types do not say.
      range.numberFormat = style.format as unknown as string[][];
    }
  }
}

const ALIGNMENT = { left: "Left", center: "Center", right: "Right" } as const;

function applyStyle(format: Excel.RangeFormat, style: Style): void {
  const { font, fill } = format;
  if (style.bold) font.bold = true;
  if (style.italic) font.italic = true;
  if (style.size !== undefined) font.size = style.size;
  if (style.ink !== undefined) font.color = style.ink;
  if (style.fill !== undefined) fill.color = style.fill;
  if (style.align !== undefined) format.horizontalAlignment = ALIGNMENT[style.align];
  if (style.wrap) {
    format.wrapText = true;
    format.verticalAlignment = "Top";
  }
  for (const [edge, colour] of [
    ["EdgeTop", style.border?.top],
    ["EdgeBottom", style.border?.bottom],
  ] as const) {
    if (colour === undefined) continue;
    const border = format.borders.getItem(edge);
    border.style = "Continuous";
    border.color = colour;
  }
}
