/** Filters the rows around the selected cell: which rows those are, and which of them a criterion leaves. */
import type { Worksheet } from "@univerjs/core";
import { areaAddress, columnName } from "../../workbook/address";
import { common, holdsCell, overlap } from "../../workbook/areas";
import type { Area, Value } from "../../workbook/book";
import {
  type Criterion,
  type Filter,
  type FilteredColumn,
  filteredArea,
  governs,
  isActive,
} from "../../workbook/filter";
import { isEditing, WHILE_EDITING } from "../grid/editing";
import { type Grid, workbookOf } from "../grid/grid";
import { writeAsOneStep } from "../grid/one-step";
import { aroundCell } from "../sorting/around-cell";
import { type Block, blockAt, linesOf } from "../sorting/block";
import { type Filters, isOver } from "./filters";
import { type Test, testOf } from "./passes";
import { seenCell } from "./seen-cell";

export interface Filterable {
  readonly worksheet: Worksheet;
  /** With the criteria that are set. */
  readonly filter: Filter;
  /** What heads each column. */
  readonly titles: readonly string[];
  /** Of the selected cell, counted from the first one of the filter. */
  readonly column: number;
}

/** A filter in the way of another one, as a sheet holds one beside those of its tables. */
export interface InTheWay extends Pick<Filterable, "worksheet" | "filter"> {
  readonly sentence: string;
}

/** The rows to filter and what filters them; or the sentence why none can be. */
export function filterableRows(grid: Grid, filters: Filters): Filterable | InTheWay | string {
  if (isEditing(grid)) return WHILE_EDITING;
  const around = aroundCell(grid);
  const nothing = "Select a cell in the column to filter by.";
  if (!around) return nothing;
  const { worksheet, place, sheet } = around;
  const set = filters.on(worksheet);
  const table = sheet.tables.find(({ area }) => holdsCell(area, place.row, place.column));
  if (table && !table.headerRow)
    return `The table ${table.name} has no row of heads, which its filter would be put on.`;
  const its = table
    ? set.find((filter) => isOver(filter, table))
    : set.find(({ area }) => holdsCell(area, place.row, place.column));
  const one = { ...place, rows: 1, columns: 1 };
  const block = blockAt(sheet, one, place);
  const rows = block && headed(block);
  const area = table ? filteredArea(table) : grown(its?.area, rows);
  if (!area) return nothing;
  if (area.rows < 2) return "There are no rows to filter here.";
  const beside = sheet.tables.find((one) => one !== table && overlap(one.area, area));
  if (beside)
    return `${areaAddress(area)} also holds cells of the table ${beside.name}: put an empty column or row between them.`;
  const other = set.find(
    (filter) => filter !== its && isActive(filter) && !sheet.tables.some((t) => isOver(filter, t)),
  );
  if (other && !table) {
    const sentence = `${areaAddress(other.area)} is filtered, and a sheet holds one filter beside those of its tables.`;
    return { worksheet, filter: other, sentence };
  }
  const columns = Array.from({ length: area.columns }, (_, at) => area.column + at);
  const head = table?.area.row ?? block?.head ?? area.row;
  const titles = columns.map((column) =>
    titleOf(sheet.cells.get(head)?.get(column)?.value, column),
  );
  const shift = its ? its.area.column - area.column : 0;
  const criteria = its?.columns.map((its) => ({ ...its, column: its.column + shift })) ?? [];
  const filter = { area, columns: criteria };
  return { worksheet, filter, titles, column: place.column - area.column };
}

const titleOf = (title: Value | undefined, column: number) =>
  typeof title === "string" && title !== ""
    ? `${columnName(column)} (${title})`
    : columnName(column);

/** With the row of its heads; where none is seen the first one is taken for it, as in every spreadsheet. */
const headed = ({ area, head }: Block): Area =>
  head === undefined ? area : { ...area, row: area.row - 1, rows: area.rows + 1 };

/** A filter keeps its columns, and takes in what was written below its rows. */
function grown(area: Area | undefined, rows: Area | undefined): Area | undefined {
  if (!area || !rows || !common(area, rows)) return area ?? rows;
  const end = Math.max(area.row + area.rows, rows.row + rows.rows);
  return { ...area, rows: end - area.row };
}

/** The rows that all other columns leave: what a column has to offer. */
export function rowsBeside(
  grid: Grid,
  { worksheet, filter }: Filterable,
  column: number,
): number[] {
  const others = filter.columns.filter((one) => one.column !== column);
  const passes = testsOf(grid, worksheet, filter.area, others);
  return bodyRows(filter).filter(passes);
}

export const bodyRows = ({ area }: Filter): number[] => linesOf(area).slice(1);

/** Undefined clears the column. */
export function setCriterion(
  grid: Grid,
  filters: Filters,
  rows: Filterable,
  column: number,
  criterion: Criterion | undefined,
): void {
  const others = rows.filter.columns.filter((one) => one.column !== column);
  const columns = criterion ? [...others, { column, criterion }] : others;
  apply(
    grid,
    filters,
    rows,
    columns.sort((one, another) => one.column - another.column),
  );
}

/** Also for what was typed since: a filter does not follow its cells by itself. */
export function apply(
  grid: Grid,
  filters: Filters,
  { worksheet, filter }: Pick<Filterable, "worksheet" | "filter">,
  columns: readonly FilteredColumn[],
): void {
  const workbook = workbookOf(grid);
  if (!workbook) return;
  const passes = testsOf(grid, worksheet, filter.area, columns);
  const stays = keptHidden(grid, filters, worksheet, filter, columns);
  const own = bodyRows(filter).filter((row) => stays(row) || !passes(row));
  const others = filters
    .on(worksheet)
    .filter(
      ({ area }) => !overlap(area, filter.area) && (columns.length > 0 || area !== filter.area),
    );
  const theirs = filters
    .filteredRows(worksheet)
    .filter((row) => others.some((one) => isActive(one) && governs(one, row)));
  const now = [...others, { area: filter.area, columns }];
  const hidden = [...new Set([...own, ...theirs])].sort((one, another) => one - another);
  const steps = [filters.step(worksheet, now, hidden)];
  writeAsOneStep(grid, workbook, new Map(), { steps });
}

function testsOf(
  grid: Grid,
  worksheet: Worksheet,
  area: Area,
  columns: readonly FilteredColumn[],
): (row: number) => boolean {
  const tests = columns.flatMap(({ column, criterion }): [number, Test][] => {
    const test = testOf(criterion);
    return test ? [[area.column + column, test]] : [];
  });
  return (row) => tests.every(([column, test]) => test(seenCell(grid, worksheet, row, column)));
}

/** What a kind of filter hid that is not understood goes on being hidden as long as that is set. */
function keptHidden(
  grid: Grid,
  filters: Filters,
  worksheet: Worksheet,
  { area, columns: before }: Filter,
  columns: readonly FilteredColumn[],
): (row: number) => boolean {
  if (!columns.some(({ criterion }) => criterion.kind === "other")) return () => false;
  const passed = testsOf(grid, worksheet, area, before);
  return (row) => filters.isFiltered(worksheet, row) && passed(row);
}
