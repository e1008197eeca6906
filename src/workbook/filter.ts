/** What a filter over rows asks for, and which rows it hides. Its first row holds the heads. */
import type { Area, Book, Sheet, Table } from "./book";

export interface Filter {
  /** With the row of the heads, without totals. */
  readonly area: Area;
  /** Those that ask for something, in rising order. */
  readonly columns: readonly FilteredColumn[];
}

export interface FilteredColumn {
  /** Counted from the first one of the filter. */
  readonly column: number;
  readonly criterion: Criterion;
}

export type Criterion = ChosenValues | Conditions | OtherKind;

export interface ChosenValues {
  readonly kind: "values";
  /** As cells show them. */
  readonly texts: readonly string[];
  readonly dates: readonly DateParts[];
  readonly blank: boolean;
}

/** Year, month, day, hour, minute, second: what is left out at the end may be any. */
export type DateParts = readonly number[];

export interface Conditions {
  readonly kind: "conditions";
  /** Whether all of them must hold, or one. */
  readonly all: boolean;
  readonly conditions: readonly Condition[];
}

export interface Condition {
  readonly operator: Operator;
  /** A number, or a text in which * and ? stand for other characters; a space alone is no content. */
  readonly value: string;
}

export const operators = [
  "equal",
  "notEqual",
  "greaterThan",
  "greaterThanOrEqual",
  "lessThan",
  "lessThanOrEqual",
] as const;

export type Operator = (typeof operators)[number];

/** By colour, the ten highest and the like: kept, not understood. */
export interface OtherKind {
  readonly kind: "other";
  /** Its element in a file; blank where that says nothing elsewhere, as it names a look of its own file. */
  readonly xml: string;
}

export const isActive = ({ columns }: Filter): boolean => columns.length > 0;

/** Whether a row is one of those that the filter shows or hides. */
export const governs = ({ area }: Filter, row: number): boolean =>
  row > area.row && row < area.row + area.rows;

/** The filters of a sheet: its own one, and those of its tables. */
export const filtersOf = (
  { name, filter }: Pick<Sheet, "name" | "filter">,
  tables: Book["tables"],
): Filter[] => [
  ...(filter ? [filter] : []),
  ...tables.flatMap((table) => (table.sheet === name && table.filter ? [table.filter] : [])),
];

/** What the filter of a table is over. */
export const filteredArea = ({ area, totalsRow }: Table): Area =>
  totalsRow ? { ...area, rows: area.rows - 1 } : area;

/** How many columns of a book are filtered in a way that only its own file can say. */
export const unsaidCriteria = ({
  sheets,
  tables,
}: {
  readonly sheets: readonly Pick<Sheet, "name" | "filter">[];
  readonly tables: Book["tables"];
}): number =>
  sheets
    .flatMap((sheet) => filtersOf(sheet, tables).flatMap(({ columns }) => columns))
    .filter(({ criterion }) => criterion.kind === "other" && criterion.xml === "").length;

/** A file does not say why a row is hidden: under a filter it is the filter, as every spreadsheet takes it. */
export function filteredRows(sheet: Sheet, tables: Book["tables"]): Set<number> {
  const active = filtersOf(sheet, tables).filter(isActive);
  return new Set(sheet.hiddenRows?.filter((row) => active.some((one) => governs(one, row))));
}
