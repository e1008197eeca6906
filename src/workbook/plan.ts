/**
 * A plan says what a workbook holds, once. From it come the .xlsx file, the grid's book and what the
 * pane inserts (see layout/lay-out.ts and write/), so a plan names no cell of another part: it speaks of
 * them by symbol, and every inserted copy finds its own sheets, tables and names.
 *
 * How to write one
 * - Put every part where you want its first cell: `at: "B4"`. Parts must not overlap; laying out refuses it.
 * - Give each part that others need a symbol: `name: "wantedDose"`: small letters first, no cell address.
 * - In a formula (without "=") write the symbol in braces:
 *     {wantedDose}      an input or a result: becomes a defined name that people can read
 *     {log.steam}       the column `steam` of the table `log`, all rows
 *     {@steam}          this row's cell of that column, inside the same table
 *     {log} {log.all}   the body of a table; the body with its header row
 *     {doses}           everything that a spill fills now (as `B5#` does), or a block of cells
 *     {split[2]}        its second column; {split[2,1]} row 2, column 1 of it
 *     {cell}            in a rule or a custom validation: the cell that is being looked at
 *   Write our functions as WETEND.FAMILY.QUANTITY and native ones as Excel shows them, in English, with commas.
 * - Tables hold what people type and plain formulas a row; a formula over a whole column is a spill
 *   and stands beside the table, with `room` for the rows that it may fill.
 * - Inputs look like inputs by themselves; choose a look only for texts and blocks.
 */
export interface Plan {
  /** The file's name without extension: "dose-and-effluent". */
  readonly id: string;
  readonly title: string;
  /** The question that the workbook answers, in one sentence. */
  readonly question: string;
  readonly sheets: readonly SheetPlan[];
}

export interface SheetPlan {
  /** Up to 31 characters, none of : \ / ? * [ ]. */
  readonly name: string;
  /** Width in characters by column letter: { A: 34, B: 12 }. */
  readonly widths?: Readonly<Record<string, number>>;
  /** The first cell that scrolls: "B5" keeps rows 1 to 4 and column A in view. */
  readonly freeze?: string;
  readonly print?: PrintPlan;
  /** Whether the screen shows the lines between cells. Usual: no. */
  readonly gridlines?: boolean;
  readonly parts: readonly Part[];
}

/** Every sheet prints with its name and page numbers at the foot; this sets the rest. */
export interface PrintPlan {
  readonly landscape?: boolean;
  /** Shrinks the sheet to this many pages across. Usual: 1. */
  readonly pagesWide?: number;
  /** The same down. Usual: as many as it needs. */
  readonly pagesTall?: number;
  /** The cells that are printed: "A1:R54". Usual: all of them. */
  readonly area?: string;
  /** Rows that head every page: "4:5". */
  readonly repeatRows?: string;
}

export type Part =
  | TextPart
  | InputPart
  | ResultPart
  | TablePart
  | SpillPart
  | BlockPart
  | ChartPart
  | RulePart;

/** A line or a paragraph. With `span` it wraps within that many columns, and its row grows to fit. */
export interface TextPart {
  readonly kind: "text";
  readonly at: string;
  readonly text: string;
  readonly look?: "title" | "heading" | "body" | "note" | "caution";
  readonly span?: number;
}

/** A labelled input: label at `at`, then to its right the value, the unit, and a note. */
export interface InputPart {
  readonly kind: "input";
  readonly at: string;
  readonly name: string;
  readonly label: string;
  /** "kg/t", "fraction"…; "" where there is none. */
  readonly unit: string;
  readonly value: number | string | boolean;
  /** Number format as a spreadsheet writes it. */
  readonly format?: string;
  readonly allow?: Allowed;
  /** Shown beside the cell while it is selected: what to type, with the unit. */
  readonly help?: string;
  readonly note?: string;
}

/** A labelled result in the form of an input. `headline` marks the answer of the sheet. */
export interface ResultPart {
  readonly kind: "result";
  readonly at: string;
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly formula: string;
  readonly format?: string;
  readonly note?: string;
  readonly headline?: boolean;
}

/** An Excel table, its header row at `at`. */
export interface TablePart {
  readonly kind: "table";
  readonly at: string;
  readonly name: string;
  readonly columns: readonly TableColumnPlan[];
}

/** Either `values` (typed, one a row) or `formula` (computed in each row, never spilling). */
export interface TableColumnPlan {
  readonly key: string;
  readonly header: string;
  /** Stands in brackets after the header: "Steam (t/h)". */
  readonly unit?: string;
  readonly values?: readonly (number | string | boolean | null)[];
  readonly formula?: string;
  readonly format?: string;
  readonly allow?: Allowed;
  readonly help?: string;
}

/** One formula that fills many cells. `at` is its own cell; `headers` stand in the row above it. */
export interface SpillPart {
  readonly kind: "spill";
  readonly at: string;
  readonly name: string;
  /** One a column, unit in brackets: "Dose (kg/t)". Texts or formulas that start with "=". */
  readonly headers?: readonly string[];
  /** Where the formula brings its own headers with it. */
  readonly firstRow?: "header";
  readonly formula: string;
  /** The most cells that it may come to fill; they get the format, and nothing else may stand there. */
  readonly room: { readonly rows: number; readonly columns: number };
  /** Points: for rows that people write on by hand. */
  readonly rowHeight?: number;
  /** One for all, or one a column. */
  readonly format?: string | readonly string[];
}

/** A rectangle of cells: labels, typed numbers and formulas ("=…") as they come. */
export interface BlockPart {
  readonly kind: "block";
  readonly at: string;
  readonly name?: string;
  /** What the cells to type in hold: titles the help that is shown beside them. */
  readonly label?: string;
  readonly rows: readonly (readonly (number | string | boolean | null)[])[];
  /** One for all, or one a column. */
  readonly look?: BlockLook | readonly BlockLook[];
  /** The look of the first row where it is a header. */
  readonly firstRow?: BlockLook;
  readonly format?: string | readonly string[];
  readonly allow?: Allowed;
  readonly help?: string;
}

export type BlockLook =
  | "label"
  | "header"
  | "input"
  | "result"
  | "headline"
  | "unit"
  | "note"
  | "body";

/** What may be typed. Numbers may be symbols, too: { from: 0, to: "{highestDose}" }. */
export type Allowed =
  | { readonly number: { readonly from?: EntryBound; readonly to?: EntryBound } }
  /** A number, or a text that says why there is none. */
  | { readonly numberOrText: { readonly from: number; readonly to: number } }
  | { readonly whole: { readonly from?: EntryBound; readonly to?: EntryBound } }
  | { readonly date: { readonly from: Exclude<EntryBound, number> } }
  | { readonly oneOf: readonly string[] }
  /** One of the cells of a table column, a spill or a block: "{additives.name}". */
  | { readonly listedIn: string }
  | { readonly formula: string; readonly words: string };

export type Bound = number | string;

/** A number, or a formula with the words for it: whoever types reads these. */
export type EntryBound = number | { readonly formula: string; readonly words: string };

export type ChartKind =
  | "columns"
  | "stacked columns"
  | "full columns"
  | "bars"
  | "stacked bars"
  | "lines"
  | "points"
  | "points and lines"
  | "curve";

export interface ChartPart {
  readonly kind: "chart";
  /** The cell under its top left corner. */
  readonly at: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  readonly chart: ChartKind;
  readonly title: string;
  /** The picture in words, for those who cannot see it. */
  readonly alt: string;
  /** Titles with unit. */
  readonly x: AxisPlan;
  readonly y: AxisPlan;
  readonly series: readonly SeriesPlan[];
}

export interface AxisPlan {
  readonly title: string;
  readonly format?: string;
  readonly from?: number;
  readonly to?: number;
}

/** `values` and `x` name cells: "{log.cod}", "{split[2]}", "{doses}". A spill is drawn as far as it now reaches. */
export interface SeriesPlan {
  readonly name: string;
  readonly values: string;
  /** Categories, or the x of points and curves. */
  readonly x?: string;
  /** How it is drawn: a `limit` is a dashed line in the warning colour, also across columns; a `band` is thin, `measured` points only. */
  readonly role?: "limit" | "band" | "measured" | "line";
}

/** A conditional format over the cells of `on`: "{cod}", "{log.ph}", "{split[2]}". */
export interface RulePart {
  readonly kind: "rule";
  readonly on: string;
  readonly when:
    | { readonly above: Bound }
    | { readonly below: Bound }
    | { readonly formula: string }
    | "error";
  readonly look: "breach" | "warning" | "good";
}
