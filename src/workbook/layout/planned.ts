import type { Area, Book, CellComment, Sheet, Table } from "../book";
import type { AxisPlan, ChartKind, PrintPlan, SeriesPlan } from "../plan";
import type { ConditionalFormat, EntryRule } from "../sheet-rules";

/** A plan with every symbol turned into addresses and names: a book, and what a book alone does not hold. */
export interface PlannedBook extends Book {
  readonly title: string;
  readonly question: string;
  readonly sheets: readonly PlannedSheet[];
  readonly tables: readonly PlannedTable[];
}

export interface PlannedSheet
  extends Omit<Sheet, "gridlines" | "formats" | "entryRules" | "comments">,
    BesideCells {}

/** What a sheet of a plan holds beside its cells. */
export interface BesideCells {
  readonly print: PrintPlan;
  readonly gridlines: boolean;
  readonly entryRules: readonly EntryRule[];
  readonly formats: readonly ConditionalFormat[];
  readonly comments: readonly CellComment[];
  readonly charts: readonly PlannedChart[];
}

/** Of a sheet that no plan made. */
export const bareSheet: BesideCells = {
  print: {},
  gridlines: true,
  entryRules: [],
  formats: [],
  comments: [],
  charts: [],
};

export interface PlannedTable extends Table {
  /** By column, for those that are computed. */
  readonly formulas: readonly (string | undefined)[];
}

export interface PlannedChart {
  readonly row: number;
  readonly column: number;
  readonly width: number;
  readonly height: number;
  readonly chart: ChartKind;
  readonly title: string;
  readonly alt: string;
  readonly x: AxisPlan;
  readonly y: AxisPlan;
  readonly series: readonly PlannedSeries[];
  /** Also the cells of hidden rows and columns. */
  readonly drawsHidden?: boolean;
}

export interface PlannedSeries {
  readonly name: string;
  readonly role: NonNullable<SeriesPlan["role"]>;
  readonly values: CellsOf;
  readonly x?: CellsOf;
}

/** Cells that a chart draws. Those of a spill lie within its room; `spillAt` is the cell of its formula. */
export interface CellsOf {
  readonly sheet: string;
  readonly area: Area;
  readonly spillAt?: { readonly row: number; readonly column: number };
}
