/**
 * The filters of the sheets in the grid. The grid's own package has one for each sheet, takes no error and no
 * kind that a file may have beside values and limits, and compares cells as they are rounded: so it is not used,
 * and the rows that a filter hid are marked in their own data, which goes with them when rows come and go.
 */
import {
  CommandType,
  ICommandService,
  type IMutationInfo,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import { FILTERED, isMarked, markedRows } from "../../engine/hidden-rows";
import { holdsCell } from "../../workbook/areas";
import type { Book, Table } from "../../workbook/book";
import { type Filter, filteredArea, governs, isActive } from "../../workbook/filter";
import { type Followed, isGone } from "../following/followed";
import type { Follower } from "../following/follower";
import { type Grid, workbookOf } from "../grid/grid";
import type { Step } from "../grid/one-step";
import { tablesOn } from "../tables/tables";

export const SET_FILTERS = "dosewright.mutation.set-filters";

/** All filters of one sheet, and the rows that they hide. */
export interface FilteredSheet {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly filters: readonly Filter[];
  readonly rows: readonly number[];
}

/** A filter where its cells now are; undefined once its heads are gone. */
type FilterNow = () => Filter | undefined;

export class Filters {
  readonly #sheets = new Map<string, readonly FilterNow[]>();

  constructor(
    private readonly grid: Grid,
    private readonly follower: Follower,
  ) {
    grid.injector.get(ICommandService).registerCommand({
      id: SET_FILTERS,
      type: CommandType.MUTATION,
      handler: (_, params) => this.#set(params as FilteredSheet),
    });
  }

  /** Those of a workbook that came into the grid with its rows marked. */
  take(sheetId: string, filters: readonly Filter[]): void {
    this.#sheets.set(
      sheetId,
      filters.map((filter) => followed(this.follower, sheetId, filter)),
    );
  }

  forgetAll(): void {
    this.#sheets.clear();
  }

  /** Those of a sheet as it stands: one over a table has the rows that this took in. */
  on(sheet: Worksheet): Filter[] {
    const filters = this.#now(sheet.getSheetId());
    if (filters.length === 0) return [];
    const tables = tablesOn(this.grid, sheet);
    return filters.map((filter) => withTable(filter, tables));
  }

  /** As they were set: quick, for those who ask for each cell. */
  known(sheet: Worksheet): Filter[] {
    return this.#now(sheet.getSheetId());
  }

  isFiltered(sheet: Nullable<Worksheet>, row: number): boolean {
    if (!sheet || !isMarked(sheet.getRowManager().getRow(row))) return false;
    return this.#now(sheet.getSheetId()).some((filter) => isActive(filter) && governs(filter, row));
  }

  filteredRows(
    sheet: Nullable<Worksheet>,
    from = 0,
    to = (sheet?.getRowCount() ?? 0) - 1,
  ): number[] {
    const active = this.#now(sheet?.getSheetId() ?? "").filter(isActive);
    if (active.length === 0) return [];
    return markedRows(sheet, from, to).filter((row) => active.some((one) => governs(one, row)));
  }

  /** What makes these the filters of the sheet, and what takes that back. */
  step(sheet: Worksheet, filters: readonly Filter[], rows: readonly number[]): Step {
    const place = { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId() };
    const now = { filters: this.on(sheet), rows: this.filteredRows(sheet) };
    const mutation = (state: Pick<FilteredSheet, "filters" | "rows">): IMutationInfo => ({
      id: SET_FILTERS,
      params: { ...place, ...state } satisfies FilteredSheet,
    });
    return { todo: mutation({ filters, rows }), undo: mutation(now) };
  }

  /** The workbook, each of its sheets and tables with its filter. */
  withFilters(book: Book): Book {
    if (this.#sheets.size === 0) return book;
    const worksheets = workbookOf(this.grid)?.getSheets() ?? [];
    const found = new Map(worksheets.map((sheet) => [sheet.getName(), this.on(sheet)]));
    const tables = book.tables.map((table): Table => {
      const filter = found.get(table.sheet)?.find((its) => isOver(its, table));
      return filter && isActive(filter) ? { ...table, filter } : table;
    });
    const sheets = book.sheets.map((sheet) => {
      const its = book.tables.filter((table) => table.sheet === sheet.name);
      const filter = found.get(sheet.name)?.find((one) => !its.some((table) => isOver(one, table)));
      return filter ? { ...sheet, filter } : sheet;
    });
    return { ...book, sheets, tables };
  }

  #now(sheetId: string): Filter[] {
    return (this.#sheets.get(sheetId) ?? []).flatMap((now) => now() ?? []);
  }

  #set({ subUnitId, filters, rows }: FilteredSheet): boolean {
    const manager = workbookOf(this.grid)?.getSheetBySheetId(subUnitId)?.getRowManager();
    if (!manager) return false;
    for (const row of Object.values(manager.getRowData())) {
      if (!row || !isMarked(row)) continue;
      const { filtered: _, ...kept } = row.custom ?? {};
      row.custom = kept;
    }
    for (const at of rows) {
      const row = manager.getRowOrCreate(at);
      row.custom = { ...row.custom, ...FILTERED };
    }
    this.take(subUnitId, filters);
    return true;
  }
}

/** Whether a filter is that of a table: it stands over its heads. */
export const isOver = ({ area }: Filter, table: Table): boolean =>
  table.headerRow && area.row === table.area.row && holdsCell(table.area, area.row, area.column);

function withTable(filter: Filter, tables: readonly Table[]): Filter {
  const table = tables.find((one) => isOver(filter, one));
  if (!table) return filter;
  const area = filteredArea(table);
  const shift = filter.area.column - area.column;
  return {
    area,
    columns: filter.columns.map((one) => ({ ...one, column: one.column + shift })),
  };
}

function followed(follower: Follower, sheetId: string, { area, columns }: Filter): FilterNow {
  const heads = (column: number, width: number) =>
    follower.follow(sheetId, { row: area.row, rows: 1, column, columns: width });
  const whole = follower.follow(sheetId, area);
  const head = heads(area.column, area.columns);
  const each = columns.map(({ column, criterion }) => ({
    criterion,
    cell: heads(area.column + column, 1),
  }));
  const isLost = (one: Followed) => isGone(one) || one.sheetId !== sheetId;
  return () => {
    const { area: now } = whole();
    if (isLost(whole()) || isLost(head())) return undefined;
    return {
      area: now,
      columns: each.flatMap(({ cell, criterion }) =>
        isLost(cell()) ? [] : [{ column: cell().area.column - now.column, criterion }],
      ),
    };
  };
}
