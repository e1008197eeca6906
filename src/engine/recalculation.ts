import type { Workbook } from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/engine-formula";
import { addressOf } from "../workbook/address";
import { type Book, type Cell, isError, type Sheet } from "../workbook/book";
import type { EngineFormula } from "./executor";
import type { Failures } from "./failures";
import { type ReadCell, readCells } from "./read-cells";
import { Reasons } from "./reasons";
import { sheetIdAt } from "./snapshot";
import type { Place } from "./structured";

export interface Recalculation {
  /** The book that was given, with computed values, messages, and the cells that formulas fill. */
  readonly book: Book;
  /** Every cell that shows the error of a formula, in the order of sheets, rows and columns; not where an answer ends. */
  readonly failures: readonly CellFailure[];
}

export interface CellFailure {
  readonly sheet: string;
  readonly address: string;
  /** The formula that gave the error; it may stand in another cell, from which it spilled. */
  readonly formula: string;
  readonly error: string;
  /** What is wrong and what to do, or which cell the error came from, as far as it is known. */
  readonly message?: string;
}

/** Puts what was computed into a copy of the book. */
export function recalculated(
  formula: EngineFormula,
  book: Book,
  workbook: Workbook,
  model: FormulaDataModel,
  failures: Failures,
): Recalculation {
  const failing: FailingCell[] = [];
  const sheets = book.sheets.map((sheet, index): Sheet & { cells: ComputedCells } => {
    const sheetId = sheetIdAt(index);
    const worksheet = workbook.getSheetBySheetId(sheetId);
    const computed = worksheet ? readCells(model, worksheet) : new Map();
    const cells: ComputedCells = {};
    for (const row of ascending(Object.keys(sheet.cells), computed.keys())) {
      const line: Record<number, Cell> = {};
      const computedLine: Map<number, ReadCell> | undefined = computed.get(row);
      const written = sheet.cells[row] ?? {};
      for (const column of ascending(Object.keys(written), computedLine?.keys() ?? [])) {
        const read = computedLine?.get(column);
        const cell = merge(written[column], read);
        if (!cell) continue;
        line[column] = cell;
        if (!isError(cell.value) || (cell.formula === undefined && !cell.spilled)) continue;
        const { error } = cell.value;
        const from = read?.from ?? { row, column };
        if (failures.isBeyond({ sheetId, ...from }, row - from.row, column - from.column)) continue;
        const formula = cell.formula ?? sheet.cells[from.row]?.[from.column]?.formula ?? "";
        failing.push({ sheet: sheet.name, row, column, formula, error, line });
      }
      if (Object.keys(line).length > 0) cells[row] = line;
    }
    return { ...sheet, cells };
  });
  const computed = { ...book, sheets };
  const sheetIdOf = (name: string) => sheetIdAt(sheets.findIndex((sheet) => sheet.name === name));
  const reasons = new Reasons(formula, computed, failures, sheetIdOf);
  const listed = failing.map(({ sheet, row, column, formula, error, line }): CellFailure => {
    const message = reasons.of({ sheet, row, column }, error);
    const said = message === undefined ? { error } : { error, message };
    line[column] = { ...(line[column] as Cell), value: said };
    return { sheet, address: addressOf(row, column), formula, ...said };
  });
  return { book: computed, failures: listed };
}

type ComputedCells = Record<number, Record<number, Cell>>;

interface FailingCell extends Place {
  readonly formula: string;
  readonly error: string;
  /** The row in which it stands, to be told why it fails once all cells are there. */
  readonly line: Record<number, Cell>;
}

function ascending(written: Iterable<string>, computed: Iterable<number>): number[] {
  return [...new Set([...[...written].map(Number), ...computed])].sort((one, other) => one - other);
}

function merge(written: Cell | undefined, read: ReadCell | undefined): Cell | undefined {
  const look = written?.style === undefined ? {} : { style: written.style };
  if (written?.formula !== undefined && read) {
    const { spill: before, ...rest } = written;
    const spill = written.fixed ? before : (read.spill ?? (before && { rows: 1, columns: 1 }));
    return { ...rest, value: read.value, ...(spill ? { spill } : {}) };
  }
  if (read?.from) return { value: read.value, spilled: true, ...look };
  if (written?.spilled) return written.style === undefined ? undefined : { value: null, ...look };
  return written;
}
