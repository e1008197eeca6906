import { addressOf } from "../address";
import type { Area, Cell, Style } from "../book";
import type { ConditionalFormat, EntryRule } from "../sheet-rules";
import { type Look, looks } from "./looks";
import type { PlannedChart, PlannedTable } from "./planned";
import { inFormula, type Symbols } from "./symbols";

/** What a sheet gathers while its parts are placed; all sheets share the symbols and the styles. */
export interface Draft {
  readonly name: string;
  readonly symbols: Symbols;
  readonly styles: Record<string, Style>;
  readonly widths: Readonly<Record<number, number>>;
  readonly cells: Record<number, Record<number, Cell>>;
  readonly rowHeights: Record<number, number>;
  readonly merged: Area[];
  readonly entryRules: EntryRule[];
  readonly formats: ConditionalFormat[];
  readonly charts: PlannedChart[];
  readonly tables: PlannedTable[];
}

/** Width in characters of a column that a plan gives none. */
const usualWidth = 8.43;
/** Letters that stand, on average, in the width of a digit, which is what widths count: in bold and in wide type, too. */
const lettersPerWidth = 0.95;
/** Height in points of a line at 11 points. */
const lineHeight = 15;

/** The key of a style made of a look and a number format; the style is noted in the draft. */
export function styleKey(draft: Draft, look: Look, format?: string, wrap = false): string {
  const key = [look, ...(wrap ? ["wrapped"] : []), ...(format === undefined ? [] : [format])];
  const name = key.join(" ");
  draft.styles[name] ??= {
    ...looks[look],
    ...(wrap ? { wrap, vertical: "top" } : {}),
    ...(format === undefined ? {} : { format }),
  };
  return name;
}

/** Puts a cell; a plan that puts two into one place is wrong. */
export function put(draft: Draft, row: number, column: number, cell: Cell): void {
  draft.cells[row] ??= {};
  const line = draft.cells[row] as Record<number, Cell>;
  if (line[column])
    throw new Error(`Two parts of the sheet "${draft.name}" meet at ${addressOf(row, column)}.`);
  line[column] = cell;
}

/** Lines that a text takes where words do not fit into the width any more. */
function linesOf(text: string, width: number): number {
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    lines++;
    let used = 0;
    for (const word of paragraph.split(" ")) {
      if (used > 0 && used + 1 + word.length > width) {
        lines++;
        used = 0;
      }
      used += (used > 0 ? 1 : 0) + word.length;
    }
  }
  return lines;
}

/** Makes a row high enough for a text that wraps over some columns. */
export function growRow(draft: Draft, row: number, column: number, span: number, text: string) {
  let width = 0;
  for (let offset = 0; offset < span; offset++)
    width += draft.widths[column + offset] ?? usualWidth;
  const height = linesOf(text, width * lettersPerWidth) * lineHeight;
  draft.rowHeights[row] = Math.max(draft.rowHeights[row] ?? 0, height);
}

/** A formula of the plan as a cell, in the form that may spill. */
export function formulaCell(draft: Draft, formula: string, style: string): Cell {
  const text = inFormula(draft.symbols, formula, { sheet: draft.name });
  return { value: null, formula: text, spill: { rows: 1, columns: 1 }, style };
}
