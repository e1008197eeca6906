import { columnIndex, parseAddress } from "../address";
import type { DefinedName, Style } from "../book";
import type { Part, Plan, SheetPlan } from "../plan";
import type { Draft } from "./draft";
import { freeSheetName, freeWord, nothingTaken, type Taken } from "./free-names";
import { headerText, tableRows } from "./place-cells";
import { placePart } from "./place-part";
import type { PlannedBook, PlannedSheet, PlannedTable } from "./planned";
import { absoluteCells, type Meaning, type Symbols } from "./symbols";

/** What the symbol of a part stands for. */
function meaningOf(part: Part, sheet: string, words: ReadonlySet<string>): Meaning | undefined {
  switch (part.kind) {
    case "input":
    case "result": {
      const at = parseAddress(part.at);
      const area = { row: at.row, column: at.column + 1, rows: 1, columns: 1 };
      return { kind: "name", sheet, area, name: freeWord(part.name, words) };
    }
    case "table": {
      const headers = new Map(part.columns.map((c) => [c.key, headerText(c.header, c.unit)]));
      const size = { rows: tableRows(part) + 1, columns: part.columns.length };
      const area = { ...parseAddress(part.at), ...size };
      return { kind: "table", sheet, area, name: freeWord(part.name, words), headers };
    }
    case "spill":
      return { kind: "spill", sheet, area: { ...parseAddress(part.at), ...part.room } };
    case "block": {
      const size = {
        rows: part.rows.length,
        columns: Math.max(...part.rows.map((row) => row.length)),
      };
      return { kind: "block", sheet, area: { ...parseAddress(part.at), ...size } };
    }
    default:
      return undefined;
  }
}

function symbolsOf(plan: Plan, sheetNames: readonly string[], words: ReadonlySet<string>): Symbols {
  const symbols = new Map<string, Meaning>();
  plan.sheets.forEach((sheet, index) => {
    for (const part of sheet.parts) {
      const meaning = meaningOf(part, sheetNames[index] as string, words);
      if (!meaning || !("name" in part) || part.name === undefined) continue;
      if (symbols.has(part.name)) throw new Error(`Two parts are named "${part.name}".`);
      symbols.set(part.name, meaning);
    }
  });
  return symbols;
}

function definedNames(symbols: Symbols): DefinedName[] {
  return [...symbols.values()]
    .filter((meaning) => meaning.kind === "name")
    .map((meaning) => ({ name: meaning.name, formula: absoluteCells(meaning) }));
}

function sheetNamesOf(plan: Plan, taken: Taken): string[] {
  const used = new Set(taken.sheets);
  return plan.sheets.map(({ name }) => {
    const free = freeSheetName(name, used);
    used.add(free.toLowerCase());
    return free;
  });
}

function layOutSheet(
  sheet: SheetPlan,
  shared: Pick<Draft, "name" | "symbols" | "styles" | "tables">,
): PlannedSheet {
  const widths: Record<number, number> = {};
  for (const [column, width] of Object.entries(sheet.widths ?? {}))
    widths[columnIndex(column)] = width;
  const draft: Draft = {
    ...shared,
    widths,
    cells: {},
    rowHeights: {},
    merged: [],
    entryRules: [],
    formats: [],
    charts: [],
  };
  for (const part of sheet.parts) placePart(draft, part);
  const corner = sheet.freeze === undefined ? undefined : parseAddress(sheet.freeze);
  return {
    name: draft.name,
    cells: draft.cells,
    columnWidths: widths,
    rowHeights: draft.rowHeights,
    merged: draft.merged,
    ...(corner ? { frozen: { rows: corner.row, columns: corner.column } } : {}),
    print: sheet.print ?? {},
    gridlines: sheet.gridlines ?? false,
    entryRules: draft.entryRules,
    formats: draft.formats,
    comments: [],
    charts: draft.charts,
  };
}

/**
 * Turns a plan into a book: symbols become names, tables and addresses. A copy that goes into a
 * workbook that has some of these already takes others.
 */
export function layOut(plan: Plan, taken: Taken = nothingTaken): PlannedBook {
  const sheetNames = sheetNamesOf(plan, taken);
  const symbols = symbolsOf(plan, sheetNames, taken.words);
  const styles: Record<string, Style> = {};
  const tables: PlannedTable[] = [];
  const sheets = plan.sheets.map((sheet, index) =>
    layOutSheet(sheet, { name: sheetNames[index] as string, symbols, styles, tables }),
  );
  return {
    title: plan.title,
    question: plan.question,
    sheets,
    tables,
    styles,
    definedNames: definedNames(symbols),
  };
}
