import type { Call } from "../cells/observer";
import type { Taken } from "../workbook/layout/free-names";
import type { PlannedBook } from "../workbook/layout/planned";

/**
 * What a sheet can do for the pane. The pane knows this and no more; where there is no sheet at all
 * (the pane opened as a plain page) there is no host. Every method that writes leaves alone what stands
 * in a cell, and every one that cannot do its work throws a `HostRefusal` that says why and what to do.
 */
export interface SheetHost {
  /** The namespace under which the functions run here: what goes before the id in a formula. */
  readonly namespace: string;
  readonly can: Abilities;

  /** What is selected; undefined where nothing is (a chart, no open sheet). */
  readSelection(): Promise<Selection | undefined>;
  /** Tells of every new selection and of every new content of the selected cell, until it is stopped. */
  watchSelection(listener: (selection: Selection | undefined) => void): Stop;
  /** Selects a cell or a range and brings it into view. */
  select(address: string): Promise<void>;

  /**
   * Writes one formula into the cell at `address`, if it is blank. Where it is not, refuses as "occupied";
   * with `replacing`, the cell as the person saw it when agreeing to replace it, writes as long as the
   * cell still holds the same.
   */
  insertFormula(address: string, formula: string, replacing?: SheetCell): Promise<void>;
  /** Writes values as they are (a text that starts with "=" stays a text) from `address` on, if all of it is blank. */
  insertValues(address: string, rows: readonly (readonly CellValue[])[]): Promise<Inserted>;
  /** The same as a sheet table, under a name that is free. */
  insertTable(address: string, table: NewTable): Promise<InsertedTable>;
  /**
   * Adds sheets and leaves the ones that are there alone. The book is made from the names that are taken
   * here, so that its sheets, tables and defined names are free ones. Gives the names of the new sheets.
   */
  addSheets(makeBook: (taken: Taken) => PlannedBook): Promise<readonly string[]>;

  /** The sheet tables whose first column has this header, in any case (own additives, own components). */
  readTables(firstHeader: string): Promise<readonly SheetTable[]>;
  /** Tells when they may hold something else, until it is stopped; a host that cannot say so never does. */
  watchTables(listener: () => void): Stop;

  /** Every cell in the workbook that holds one of our functions and shows an error. */
  listFailures(): Promise<readonly FailedCell[]>;
  /** Re-enters the formulas of cells that lost their link to the functions; gives those that still fail. */
  relink(failed: readonly FailedCell[]): Promise<readonly FailedCell[]>;
  /** Computes the whole workbook again, so that every cell of ours is called. */
  recalculate(): Promise<void>;

  /** The latest calls that a cell made, in the order in which they ended; none where it was not computed since the start. */
  callsAt(address: string): readonly Call[];
  /** Tells the address of every cell that has a new call, until it is stopped. */
  watchCalls(listener: (address: string) => void): Stop;

  /**
   * Opens a copy of the workbook with values in place of our formulas and a note of what was replaced;
   * a host that has one workbook at a time saves it as a file. The workbook itself stays untouched.
   */
  openValuesCopy(): Promise<"opened" | "saved">;

  /** Whether the functions load with this workbook, before anyone opens the pane. */
  loadsWithWorkbook(): Promise<boolean>;
  setLoadsWithWorkbook(loads: boolean): Promise<void>;

  /** The theme that the host shows; undefined where it does not say: then the system's own counts. */
  theme(): "light" | "dark" | undefined;
}

/** What this host, in the version that runs, can do beyond reading the selection and writing cells. */
export interface Abilities {
  readonly insertTable: boolean;
  readonly addSheets: boolean;
  /** Whether added sheets and inserted cells are one step to undo. */
  readonly undoInOneStep: boolean;
  readonly openValuesCopy: boolean;
  readonly loadWithWorkbook: boolean;
}

export type Stop = () => void;

export type CellValue = number | string | boolean | null;

/** A cell as it was when it was read. */
export interface SheetCell {
  /** With its sheet: Log!B4, 'Mill log'!B4. */
  readonly address: string;
  /** As the person sees it, with "="; "" where the cell holds no formula. */
  readonly formula: string;
  /** An error as the cell shows it: "#N/A". A blank cell is null. */
  readonly value: CellValue;
}

/** A cell that is selected. */
export interface SelectedCell extends SheetCell {
  /** The cell of the formula that spilled its value here, where it is another one and the host says so. */
  readonly spilledFrom?: SheetCell;
  /** Why it shows an error, from where that arose, where the host can follow it. */
  readonly reason?: string;
}

export interface Selection {
  /** All that is selected: Log!B4:B33. */
  readonly address: string;
  /** Its first cell. */
  readonly cell: SelectedCell;
}

export interface Inserted {
  /** The cells that were filled: Log!B4:F4. */
  readonly address: string;
}

export interface InsertedTable extends Inserted {
  /** The name that it got. */
  readonly name: string;
}

export interface NewTable {
  /** The name that it shall have; where it is taken, a number follows. */
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

export interface SheetTable {
  readonly name: string;
  /** Header row included: Additives!A1:H9. */
  readonly address: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

export interface FailedCell extends SheetCell {
  /** "#VALUE!", "#N/A", "#NAME?"… */
  readonly error: string;
  /** See SelectedCell. */
  readonly reason?: string;
  /** Whether it merely lost its link to the functions, which entering it again repairs. */
  readonly lostLink: boolean;
  /** The cell of the formula, where that spilled the error here. */
  readonly spilledFrom?: string;
}

/** Why a host does not do something: a sentence for the person at the sheet, and the kind for the pane. */
export class HostRefusal extends Error {
  override readonly name = "HostRefusal";

  constructor(
    readonly kind: HostRefusalKind,
    message: string,
  ) {
    super(message);
  }
}

export type HostRefusalKind =
  | "editing" // a cell is being edited
  | "occupied" // something stands where it should be written
  | "protected" // the sheet or the workbook is protected
  | "unsupported" // this version of the host lacks what is needed
  | "no such place" // the sheet or the cell is gone
  | "lost"; // the host does not answer any more
