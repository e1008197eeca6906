/** What the sheets hold beside their cells, kept at the cells to which it belongs. */
import { ICommandService } from "@univerjs/core";
import {
  CopySheetCommand,
  type IInsertSheetMutationParams,
  InsertSheetMutation,
} from "@univerjs/sheets";
import type { Area, Style } from "../../workbook/book";
import { filtersOf } from "../../workbook/filter";
import { type Frame, type NamedFrame, withGrownTables } from "../../workbook/layout/filled-in";
import {
  bareSheet,
  type PlannedBook,
  type PlannedSheet,
  type PlannedTable,
} from "../../workbook/layout/planned";
import type { ConditionalFormat, EntryRule } from "../../workbook/sheet-rules";
import { Filters } from "../filtering/filters";
import { type Grid, workbookOf } from "../grid/grid";
import { allTables, placed, Tables } from "../tables/tables";
import { type ChartNow, followChart, type NameOf } from "./charts";
import { FollowedComments } from "./comments";
import { type Followed, isGone } from "./followed";
import { Follower } from "./follower";
import { followRule, type RuleNow } from "./rules";

interface FollowedSheet {
  readonly sheetId: string;
  readonly plan: Pick<PlannedSheet, "gridlines" | "print" | "unreadRules">;
  /** The rows that head every printed page. */
  readonly heads: (() => Followed) | undefined;
}

interface FollowedTable {
  readonly plan: PlannedTable;
  readonly cells: () => Followed;
}

export interface FrameNow extends Frame {
  /** How many charts, series and rules name cells that are gone. */
  readonly lost: number;
  /** How many rules of the file were never understood. */
  readonly unread: number;
  /** By the names of their sheets, where cells stood that were put elsewhere. */
  readonly cuts: ReadonlyMap<string, readonly Area[]>;
}

export class BesideCells {
  readonly #follower: Follower;
  readonly filters: Filters;
  readonly comments: FollowedComments;
  readonly #tables: Tables;
  #sheets: FollowedSheet[] = [];
  #plannedTables: FollowedTable[] = [];
  #charts: ((nameOf: NameOf) => ChartNow)[] = [];
  #entryRules: RuleNow<EntryRule>[] = [];
  #formats: RuleNow<ConditionalFormat>[] = [];
  #styles: Readonly<Record<string, Style>> = {};

  constructor(private readonly grid: Grid) {
    this.#follower = new Follower(grid);
    this.comments = new FollowedComments(grid, this.#follower);
    this.filters = new Filters(grid, this.#follower);
    this.#tables = new Tables(grid, this.#follower);
    const commands = grid.injector.get(ICommandService);
    let copied: string | undefined;
    commands.beforeCommandExecuted(({ id, params }) => {
      if (id !== CopySheetCommand.id) return;
      const { subUnitId } = (params ?? {}) as { subUnitId?: string };
      copied = subUnitId ?? workbookOf(grid)?.getActiveSheet()?.getSheetId();
    });
    commands.onCommandExecuted(({ id, params }) => {
      if (id === InsertSheetMutation.id && copied !== undefined)
        this.#copy(copied, (params as IInsertSheetMutationParams).sheet.id);
      if (id === CopySheetCommand.id) copied = undefined;
    });
  }

  /** Sheets of a plan that came into the grid, with the ids that they have there. */
  take(
    { sheets, tables, styles }: Pick<PlannedBook, "sheets" | "tables" | "styles">,
    ids: readonly string[],
  ): void {
    const idOf = (name: string) =>
      ids[sheets.findIndex((sheet) => sheet.name === name)] ?? "no such sheet";
    for (const sheet of sheets) {
      this.#takeSheet(sheet, idOf);
      this.filters.take(idOf(sheet.name), filtersOf(sheet, tables));
    }
    for (const plan of tables) {
      const sheetId = idOf(plan.sheet);
      this.#plannedTables.push({ plan, cells: this.#follower.follow(sheetId, plan.area) });
      this.#tables.take([placed(plan, sheetId)]);
    }
    this.#styles = { ...styles, ...this.#styles };
  }

  #takeSheet(sheet: PlannedSheet, idOf: (name: string) => string): void {
    const sheetId = idOf(sheet.name);
    const follower = this.#follower;
    this.comments.take(sheetId, sheet.comments);
    const heads = headRows(sheet);
    this.#sheets.push({ sheetId, plan: sheet, heads: heads && follower.follow(sheetId, heads) });
    for (const chart of sheet.charts)
      this.#charts.push(followChart(follower, sheetId, chart, idOf));
    for (const rule of sheet.entryRules) {
      const { from, to } = rule;
      const rules = followRule(follower, "entry rule", sheetId, rule, { from, to }, idOf);
      this.#entryRules.push(rules);
    }
    for (const format of sheet.formats) {
      const { formula } = format;
      this.#formats.push(followRule(follower, "format", sheetId, format, { formula }, idOf));
    }
  }

  /** A copy of a sheet has what that one has; what names its own cells names those of the copy. */
  #copy(from: string, to: string): void {
    const sheet = this.frame().sheets.find(({ name }) => name === this.#nameOf(from));
    if (!sheet) return;
    const workbook = workbookOf(this.grid);
    const idOf = (name: string) =>
      name === sheet.name ? to : (workbook?.getSheetBySheetName(name)?.getSheetId() ?? "");
    this.#takeSheet({ ...sheet, cells: {} }, idOf);
    const original = workbook?.getSheetBySheetId(from);
    if (!original) return;
    this.filters.take(to, this.filters.on(original));
    this.#tables.copy(original, to);
  }

  forgetAll(): void {
    this.#follower.forgetAll();
    this.comments.forgetAll();
    this.filters.forgetAll();
    this.#tables.forgetAll();
    [this.#sheets, this.#plannedTables, this.#styles] = [[], [], {}];
    [this.#charts, this.#entryRules, this.#formats] = [[], [], []];
  }

  /** Whether rows or columns stand elsewhere than they did when the workbook was opened. */
  get linesMoved(): boolean {
    return this.#follower.linesMoved;
  }

  chartsOn(sheetId: string): ChartNow[] {
    const charts = this.#charts
      .map((chart) => chart(this.#nameOf))
      .filter((chart) => chart.sheetId === sheetId);
    if (charts.length === 0 || this.#plannedTables.length === 0) return charts;
    const sheet = { ...bareSheet, name: "", charts: charts.map(({ chart }) => chart) };
    const grown = withGrownTables(sheet, this.#tablesNow(), allTables(this.grid)).charts;
    return charts.map((now, index) => ({ ...now, chart: grown[index] ?? now.chart }));
  }

  /** All of it for the sheets as they are called now. */
  frame(): FrameNow {
    const charts = this.#charts.map((chart) => chart(this.#nameOf));
    const entryRules = this.#entryRules.flatMap((rule) => rule(this.#nameOf));
    const formats = this.#formats.flatMap((rule) => rule(this.#nameOf));
    const comments = this.comments.now(this.#nameOf);
    const shown = charts.filter((chart) => this.#nameOf(chart.sheetId) !== undefined);
    const broken = [...entryRules, ...formats].filter(({ rule }) => rule === undefined);
    const sheets = (workbookOf(this.grid)?.getSheets() ?? []).map((worksheet): NamedFrame => {
      const id = worksheet.getSheetId();
      const on = <T>(all: readonly { sheetId: string; rule: T | undefined }[]) =>
        all.flatMap(({ sheetId, rule }) => (sheetId === id && rule ? [rule] : []));
      return {
        ...bareSheet,
        ...this.#planOf(id),
        name: worksheet.getName(),
        charts: shown
          .filter(({ sheetId, chart }) => sheetId === id && chart.series.length > 0)
          .map(({ chart }) => chart),
        entryRules: on(entryRules),
        formats: on(formats),
        comments: on(comments),
      };
    });
    const unread = this.#sheets
      .filter(({ sheetId }) => this.#nameOf(sheetId) !== undefined)
      .reduce((sum, { plan }) => sum + (plan.unreadRules ?? 0), 0);
    const lost = broken.length + shown.reduce((sum, { lost }) => sum + lost.length, 0);
    const cuts = new Map(
      this.#sheets.flatMap(({ sheetId }) => {
        const name = this.#nameOf(sheetId);
        return name === undefined ? [] : [[name, this.#follower.cutFrom(sheetId)] as const];
      }),
    );
    return { sheets, tables: this.#tablesNow(), styles: this.#styles, lost, unread, cuts };
  }

  readonly #nameOf = (sheetId: string) =>
    workbookOf(this.grid)?.getSheetBySheetId(sheetId)?.getName();

  #planOf(id: string): Pick<PlannedSheet, "gridlines" | "print"> | undefined {
    const sheet = this.#sheets.find(({ sheetId }) => sheetId === id);
    if (!sheet) return undefined;
    const { gridlines, print } = sheet.plan;
    const { repeatRows, ...kept } = print;
    const heads = sheet.heads?.();
    if (repeatRows === undefined || !heads || isGone(heads)) return { gridlines, print: kept };
    const { row, rows } = heads.area;
    return { gridlines, print: { ...kept, repeatRows: `${row + 1}:${row + rows}` } };
  }

  #tablesNow(): PlannedTable[] {
    return this.#plannedTables.flatMap(({ plan, cells }) => {
      const { sheetId, area } = cells();
      const sheet = this.#nameOf(sheetId);
      return sheet === undefined ? [] : [{ ...plan, sheet, area }];
    });
  }
}

function headRows({ print: { repeatRows } }: PlannedSheet) {
  const [from, to] = (repeatRows ?? "").split(":").map(Number);
  if (from === undefined || to === undefined) return undefined;
  return { row: from - 1, rows: to - from + 1, column: 0, columns: 1 };
}
