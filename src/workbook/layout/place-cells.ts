import { parseAddress } from "../address";
import type { Area } from "../book";
import type { BlockPart, SpillPart, TablePart } from "../plan";
import { allowIn } from "./allow";
import { type Draft, formulaCell, growRow, put, styleKey } from "./draft";
import type { Look } from "./looks";
import { inFormula, type Meaning } from "./symbols";

export const headerText = (header: string, unit?: string): string =>
  unit ? `${header} (${unit})` : header;

export const tableRows = (part: TablePart): number =>
  Math.max(1, ...part.columns.map((column) => column.values?.length ?? 0));

/** One for all, or the one at this place. */
const nth = <T>(given: T | readonly T[] | undefined, index: number): T | undefined =>
  Array.isArray(given) ? (given[index] as T | undefined) : (given as T | undefined);

const headerLook = (format: string | undefined) =>
  format === undefined || format === "" || format.includes("@") ? "header" : "numberHeader";

export function placeTable(draft: Draft, part: TablePart): void {
  const { row, column } = parseAddress(part.at);
  const meaning = draft.symbols.get(part.name) as Meaning & { kind: "table" };
  const rows = tableRows(part);
  const place = { sheet: draft.name, table: part.name };
  const formulas = part.columns.map((plan) =>
    plan.formula === undefined ? undefined : inFormula(draft.symbols, plan.formula, place),
  );
  part.columns.forEach((plan, index) => {
    const header = headerText(plan.header, plan.unit);
    const headerStyle = styleKey(draft, headerLook(plan.format));
    put(draft, row, column + index, { value: header, style: headerStyle });
    growRow(draft, row, column + index, 1, header);
    const formula = formulas[index];
    const style = styleKey(draft, formula === undefined ? "input" : "result", plan.format);
    for (let line = 0; line < rows; line++) {
      const value = plan.values?.[line] ?? null;
      put(
        draft,
        row + 1 + line,
        column + index,
        formula === undefined ? { value, style } : { value: null, formula, style },
      );
    }
    const body = { row: row + 1, column: column + index, rows, columns: 1 };
    allowIn(draft, body, { ...plan, label: plan.header });
  });
  draft.tables.push({
    name: meaning.name,
    sheet: draft.name,
    area: meaning.area,
    columns: [...meaning.headers.values()],
    headerRow: true,
    totalsRow: false,
    formulas,
  });
}

export function placeSpill(draft: Draft, part: SpillPart): void {
  const { row, column } = parseAddress(part.at);
  part.headers?.forEach((header, index) => {
    const style = styleKey(draft, headerLook(nth(part.format, index)));
    const cell = header.startsWith("=")
      ? formulaCell(draft, header.slice(1), style)
      : { value: header, style };
    put(draft, row - 1, column + index, cell);
    growRow(draft, row - 1, column + index, 1, header);
  });
  for (let line = 0; line < part.room.rows; line++) {
    if (part.rowHeight !== undefined) draft.rowHeights[row + line] = part.rowHeight;
    for (let index = 0; index < part.room.columns; index++) {
      const format = nth(part.format, index);
      const style =
        line === 0 && part.firstRow
          ? styleKey(draft, headerLook(format))
          : styleKey(draft, "result", format);
      const isAnchor = line === 0 && index === 0;
      put(
        draft,
        row + line,
        column + index,
        isAnchor ? formulaCell(draft, part.formula, style) : { value: null, style },
      );
    }
  }
}

function lookOf(part: BlockPart, line: number, index: number): Look {
  const first = line === 0 ? part.firstRow : undefined;
  if (first === "header") return headerLook(nth(part.format, index));
  return first ?? nth(part.look, index) ?? "body";
}

export function placeBlock(draft: Draft, part: BlockPart): void {
  const { row, column } = parseAddress(part.at);
  part.rows.forEach((values, line) => {
    values.forEach((value, index) => {
      const look = lookOf(part, line, index);
      const format =
        typeof value === "number" || look === "result" || look === "headline"
          ? nth(part.format, index)
          : undefined;
      const style = styleKey(draft, look, format);
      const cell =
        typeof value === "string" && value.startsWith("=")
          ? formulaCell(draft, value.slice(1), style)
          : { value, style };
      put(draft, row + line, column + index, cell);
      if (look === "input") {
        const area: Area = { row: row + line, column: column + index, rows: 1, columns: 1 };
        allowIn(draft, area, { ...part, label: part.label ?? "" });
      }
    });
  });
}
