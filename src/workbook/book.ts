import type { Filter } from "./filter";
import type { ConditionalFormat, EntryRule } from "./sheet-rules";

/**
 * A workbook as our programs hand it to one another: the reader and the plans make it, the engine
 * computes it, the grid shows it, the writer saves it. Plain data, nothing in it but what one of
 * these needs; rows and columns count from 0.
 */
export interface Book {
  readonly sheets: readonly Sheet[];
  readonly definedNames: readonly DefinedName[];
  readonly tables: readonly Table[];
  /** How a cell looks, by the key that its cells carry. */
  readonly styles: Readonly<Record<string, Style>>;
}

export interface Sheet {
  readonly name: string;
  readonly cells: Cells;
  /** Width in characters by column; a column that is not named has the usual width. */
  readonly columnWidths?: Readonly<Record<number, number>>;
  /** Height in points by row. */
  readonly rowHeights?: Readonly<Record<number, number>>;
  /** Keys of Book.styles: how cells look in which nothing has stood yet. A row comes before a column. */
  readonly rowStyles?: Readonly<Record<number, string>>;
  readonly columnStyles?: Readonly<Record<number, string>>;
  /** In rising order, those that a filter hides among them. */
  readonly hiddenRows?: readonly number[];
  readonly hiddenColumns?: readonly number[];
  /** How many rows and columns stay in view. */
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly merged?: readonly Area[];
  /** Drawn unless it says no. */
  readonly gridlines?: boolean;
  readonly hidden?: boolean;
  /** Tables have filters of their own. */
  readonly filter?: Filter;
  /** As a file has them; a plan says its own. The first one that holds comes on top. */
  readonly formats?: readonly ConditionalFormat[];
  readonly entryRules?: readonly EntryRule[];
  /** As a file has them, one at a cell. */
  readonly comments?: readonly CellComment[];
  /** How many more formats and entry rules its file has, which are not understood. */
  readonly unreadRules?: number;
}

/** What somebody noted at a cell. */
export interface CellComment {
  /** One cell. */
  readonly area: Area;
  readonly author?: string;
  readonly text: string;
  /** What tells it from all others of its file. */
  readonly id: string;
  /** Where several have their say, each signed in the one text: it is read only. */
  readonly thread?: true;
}

/**
 * The most characters of a comment. A little less than the 32,767 that the file format recommends (ISO/IEC 29500-1,
 * 18.7.7, by which each program sets its own limit): the package that writes files anew takes no more.
 */
export const LONGEST_COMMENT = 32_700;

/** Only cells that hold something, by row, then by column. */
export type Cells = { readonly [row: number]: { readonly [column: number]: Cell } };

export interface Cell {
  /** What was typed, or what the formula gave when it was last computed. A date is a serial number with a date format. */
  readonly value: Value;
  /**
   * Without "=", as people see it: our functions as WETEND.FAMILY.QUANTITY, newer native functions
   * without _xlfn., the cells that a spill fills as B4#, this row of a table as Log[[#This Row],[Day]].
   */
  readonly formula?: string;
  /** The cells that the formula fills, its own included. A dynamic array has it, also where it fills one cell. */
  readonly spill?: Extent;
  /** The array formula was entered over a fixed range (the older kind): its extent never changes. */
  readonly fixed?: boolean;
  /** The value was spilled here by the formula of another cell. */
  readonly spilled?: boolean;
  /** A key of Book.styles. */
  readonly style?: string;
}

export type Value = number | string | boolean | CellError | null;

export interface CellError {
  /** As the cell shows it: "#VALUE!", "#N/A", "#SPILL!"… */
  readonly error: string;
  /** Why, where the function said so. Files do not carry it. */
  readonly message?: string;
}

export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

export interface Area extends Extent {
  readonly row: number;
  readonly column: number;
}

export interface DefinedName {
  readonly name: string;
  /** Without "=": Log!$B$4:$B$33, or any formula. */
  readonly formula: string;
  /** The sheet where alone the name is known; without it the whole workbook. */
  readonly sheet?: string;
}

export interface Table {
  readonly name: string;
  readonly sheet: string;
  /** Header row and totals row included. */
  readonly area: Area;
  readonly columns: readonly string[];
  readonly headerRow: boolean;
  readonly totalsRow: boolean;
  readonly filter?: Filter;
}

export interface Style {
  /** Number format as a spreadsheet writes it: "0.00", "0.0 %", "yyyy-mm-dd". */
  readonly format?: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  /** Points. */
  readonly size?: number;
  /** "#rrggbb". */
  readonly ink?: string;
  /** "#rrggbb". */
  readonly fill?: string;
  readonly align?: "left" | "center" | "right";
  /** Usual: bottom. */
  readonly vertical?: "top" | "center";
  readonly wrap?: boolean;
  /** Steps of about three characters that the text keeps off the edge. */
  readonly indent?: number;
  /** Colours. */
  readonly border?: Readonly<Partial<Record<Side, string>>>;
  /** Of those sides whose line is not the usual thin one. */
  readonly borderLines?: Readonly<Partial<Record<Side, BorderLine>>>;
}

export const sides = ["left", "right", "top", "bottom"] as const;
export type Side = (typeof sides)[number];

/** As files call them (ECMA-376 Part 1, 18.18.3). */
export const borderLines = [
  "hair",
  "dotted",
  "dashed",
  "dashDot",
  "dashDotDot",
  "double",
  "medium",
  "mediumDashed",
  "mediumDashDot",
  "mediumDashDotDot",
  "slantDashDot",
  "thick",
] as const;
export type BorderLine = (typeof borderLines)[number];

export const isError = (value: Value): value is CellError =>
  typeof value === "object" && value !== null;

/** Cells that are being gathered, by row, then by column. */
type Growing<T> = Record<number, Record<number, T>>;
export type GrowingCells = Growing<Cell>;

export function putCell<T>(cells: Growing<T>, row: number, column: number, cell: NoInfer<T>): void {
  cells[row] ??= {};
  cells[row][column] = cell;
}

export const cellAt = (sheet: Sheet, row: number, column: number): Cell | undefined =>
  sheet.cells[row]?.[column];
