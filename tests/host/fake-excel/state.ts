import { placeOf } from "../../../src/host/place";
import type { Area } from "../../../src/workbook/book";

/**
 * Excel's object model as far as the add-in uses it, over a workbook in memory. It keeps the rules that a
 * plain mock forgets: nothing happens and nothing can be read before `sync`, a failed batch stops where it
 * failed and keeps what went before, and a text that looks like a formula or a number becomes one.
 */
export interface FakeCell {
  formula?: string;
  value: string | number | boolean;
  /** How far the formula spills. */
  spill?: { rows: number; columns: number };
}

export interface FakeTable {
  name: string;
  sheet: string;
  area: Area;
}

export class FakeWorkbook {
  readonly sheets = new Map<string, Map<string, FakeCell>>([["Sheet1", new Map()]]);
  readonly tables: FakeTable[] = [];
  readonly names = new Map<string, string>();
  readonly protectedSheets = new Set<string>();
  /** Everything that was set or called on formats, charts, rules, validations and the page. */
  readonly done: string[] = [];
  readonly opened: string[] = [];
  readonly listeners = new Map<string, Set<() => unknown>>();
  /** How many batches ran, and with which options. */
  readonly runs: unknown[] = [];
  selection: string | undefined = "Sheet1!A1";
  /** The error code that the next sync ends with, and the operation before which it does. */
  failing: { code: string; before?: RegExp } | undefined;
  structureProtected = false;
  /** What a formula gives once it was entered. */
  compute: (formula: string) => FakeCell["value"] = () => 0;

  cell(address: string): FakeCell | undefined {
    const { sheet, cells } = placeOf(address);
    return this.sheets.get(sheet)?.get(cells);
  }

  put(address: string, cell: FakeCell): void {
    const { sheet, cells } = placeOf(address);
    if (!this.sheets.has(sheet)) this.sheets.set(sheet, new Map());
    this.sheets.get(sheet)?.set(cells, cell);
  }

  async tell(event: string): Promise<void> {
    for (const listener of this.listeners.get(event) ?? []) await listener();
  }
}

/** An error as Excel gives it. */
export class FakeExcelError extends Error {
  constructor(readonly code: string) {
    super(`The request failed: ${code}.`);
  }
}

export const fail = (code: string): never => {
  throw new FakeExcelError(code);
};
