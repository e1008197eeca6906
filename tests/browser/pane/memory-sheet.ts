import type { Call } from "../../../src/cells/observer";
import { CallRecord } from "../../../src/host/call-record";
import {
  type CellValue,
  type FailedCell,
  HostRefusal,
  type Selection,
  type SheetCell,
  type SheetHost,
  type SheetTable,
} from "../../../src/host/host";
import { partsOf } from "../../../src/pane/working/find-calls";
import { addressOf } from "../../../src/workbook/address";

/** Everything that the pane asked a sheet to do, in order. */
export interface Deed {
  readonly what: string;
  readonly given: readonly unknown[];
}

/** A sheet that is nothing but memory: enough to show what the pane asks of a host, and what it does with the answers. */
export class MemorySheet {
  readonly record = new CallRecord();
  readonly deeds: Deed[] = [];
  readonly tables: SheetTable[] = [];
  readonly failures: FailedCell[] = [];
  theme: "light" | "dark" | undefined;
  private readonly cells = new Map<string, SheetCell>();
  private readonly listeners = new Set<(selection: Selection | undefined) => void>();
  private selected = "Sheet1!A1";

  put(address: string, formula: string, value: CellValue): void {
    this.cells.set(address, { address, formula, value });
  }

  select(address: string): void {
    this.selected = address;
    for (const listener of this.listeners) listener(this.selection());
  }

  private cellAt(address: string): SheetCell {
    return this.cells.get(address) ?? { address, formula: "", value: null };
  }

  private selection(): Selection {
    const { sheet, row, column } = partsOf(this.selected);
    return { address: this.selected, cell: this.cellAt(`${sheet}${addressOf(row, column)}`) };
  }

  private did(what: string, ...given: unknown[]): void {
    this.deeds.push({ what, given });
  }

  /** The sheet as the pane knows one. */
  readonly host: SheetHost = {
    namespace: "WETEND",
    can: {
      insertTable: true,
      addSheets: true,
      undoInOneStep: true,
      openValuesCopy: true,
      loadWithWorkbook: true,
    },
    readSelection: async () => this.selection(),
    watchSelection: (listener) => {
      this.listeners.add(listener);
      return () => this.listeners.delete(listener);
    },
    select: async (address) => this.select(address),
    insertFormula: async (address, formula, replacing) => {
      const there = this.cellAt(address);
      if (there.value !== null && replacing?.formula !== there.formula) {
        throw new HostRefusal("occupied", `${address} holds ${there.formula || there.value}.`);
      }
      this.did("insertFormula", address, formula);
      this.put(address, formula, null);
    },
    insertValues: async (address, rows) => {
      this.did("insertValues", address, rows);
      return { address };
    },
    insertTable: async (address, table) => {
      this.did("insertTable", address, table);
      this.tables.push({ ...table, address });
      return { address, name: table.name };
    },
    addSheets: async (makeBook) => {
      const book = makeBook({ sheets: new Set(["sheet1"]), words: new Set() });
      this.did("addSheets", book);
      return book.sheets.map(({ name }) => name);
    },
    readTables: async (firstHeader) =>
      this.tables.filter(({ columns }) => columns[0]?.toLowerCase() === firstHeader.toLowerCase()),
    listFailures: async () => [...this.failures],
    relink: async (failed) => {
      this.did("relink", failed);
      for (const { address } of failed) {
        this.failures.splice(
          this.failures.findIndex((one) => one.address === address),
          1,
        );
      }
      return [];
    },
    recalculate: async () => this.did("recalculate"),
    callsAt: (address) => this.record.at(address) as readonly Call[],
    watchTables: () => () => {},
    watchCalls: (listener) => this.record.watch(listener),
    openValuesCopy: async () => {
      this.did("openValuesCopy");
      return "opened";
    },
    loadsWithWorkbook: async () => true,
    setLoadsWithWorkbook: async (loads) => this.did("setLoadsWithWorkbook", loads),
    theme: () => this.theme,
  };
}
