/**
 * The tables of the workbook in the grid, which knows of none itself: they are kept beside its cells, stay at
 * theirs when these move, whatever is typed, filled or pasted there, and are set anew where one grows.
 */
import { CommandType, ICommandService, type IMutationInfo, type Worksheet } from "@univerjs/core";
import { readValue } from "../../engine/read-cells";
import { overlap } from "../../workbook/areas";
import type { Area, Table } from "../../workbook/book";
import { type Followed, isGone } from "../following/followed";
import type { Follower } from "../following/follower";
import { type Grid, workbookOf } from "../grid/grid";
import type { Step } from "../grid/one-step";

/** A table without its sheet's name, which may change. The titles are those that it came with. */
export type TableCells = Omit<Table, "sheet" | "filter"> &
  Pick<Followed, "sheetId" | "area" | "putBy">;

const SET_TABLES = "dosewright.mutation.set-tables";

interface AllTables {
  readonly tables: readonly TableCells[];
}

export class Tables {
  #tables: (() => TableCells | undefined)[] = [];

  constructor(
    private readonly grid: Grid,
    private readonly follower: Follower,
  ) {
    grid.injector.add([Tables, { useValue: this }]);
    grid.injector.get(ICommandService).registerCommand({
      id: SET_TABLES,
      type: CommandType.MUTATION,
      handler: (_, params) => {
        this.forgetAll();
        this.take((params as AllTables).tables);
        return true;
      },
    });
  }

  take(tables: readonly TableCells[]): void {
    this.#tables.push(...tables.map((table) => followed(this.follower, table)));
  }

  forgetAll(): void {
    this.#tables = [];
  }

  /** As they stand, with the titles that their heads now show. */
  all(): Table[] {
    const workbook = workbookOf(this.grid);
    const tables = this.#now();
    return (workbook?.getSheets() ?? []).flatMap((worksheet) =>
      tables
        .filter(({ sheetId }) => sheetId === worksheet.getSheetId())
        .map(({ name, area, headerRow, totalsRow, columns }) => ({
          name,
          sheet: worksheet.getName(),
          area,
          columns: titles(worksheet, { area, headerRow, columns }),
          headerRow,
          totalsRow,
        })),
    );
  }

  /** A copy of a sheet has the tables of that one, each by a name of its own. */
  copy(from: Worksheet, to: string): void {
    const tables = this.all();
    const taken = new Set(tables.map(({ name }) => name.toLowerCase()));
    const ownName = (name: string) => {
      let copy = 2;
      while (taken.has(`${name}_${copy}`.toLowerCase())) copy++;
      return `${name}_${copy}`;
    };
    const copied = tables.filter(({ sheet }) => sheet === from.getName());
    this.take(copied.map((table) => placed({ ...table, name: ownName(table.name) }, to)));
  }

  /** What puts a table in the place of the one of its name, or adds it, and what takes that back. */
  step(table: TableCells): Step {
    const before = this.#now();
    const others = before.filter(({ name }) => name !== table.name);
    return { todo: setting([...others, table]), undo: setting(before) };
  }

  /** Where cells of another table were put, that one is no more. */
  #now(): TableCells[] {
    const tables = this.#tables.flatMap((now) => now() ?? []);
    const covers = (one: TableCells, other: TableCells) =>
      one.sheetId === other.sheetId &&
      (one.putBy ?? 0) > (other.putBy ?? 0) &&
      overlap(one.area, other.area);
    return tables.filter((table) => !tables.some((one) => covers(one, table)));
  }
}

export const placed = (
  { name, area, columns, headerRow, totalsRow }: Omit<Table, "sheet">,
  sheetId: string,
): TableCells => ({ name, sheetId, area, columns, headerRow, totalsRow });

const setting = (tables: readonly TableCells[]): IMutationInfo => ({
  id: SET_TABLES,
  params: { tables } satisfies AllTables,
});

export const allTables = ({ injector }: Grid): Table[] => injector.get(Tables).all();

export const tablesOn = (grid: Grid, sheet: Worksheet): Table[] =>
  allTables(grid).filter((table) => table.sheet === sheet.getName());

/** Without its head, or the last of its rows, a table is none. */
function followed(follower: Follower, table: TableCells): () => TableCells | undefined {
  const follow = (part: Partial<Area>) =>
    follower.follow(table.sheetId, { ...table.area, ...part });
  const { row, rows } = table.area;
  const whole = follow({});
  const head = table.headerRow ? follow({ rows: 1 }) : undefined;
  const foot = table.totalsRow ? follow({ row: row + rows - 1, rows: 1 }) : undefined;
  return () => {
    const { sheetId, area, putBy } = whole();
    const totalsRow = foot !== undefined && !isGone(foot());
    const body = area.rows - (head ? 1 : 0) - (totalsRow ? 1 : 0);
    if (body < 1 || area.columns === 0 || (head && isGone(head()))) return undefined;
    return { ...table, sheetId, area, totalsRow, ...(putBy !== undefined && { putBy }) };
  };
}

function titles(
  worksheet: Worksheet,
  { area, headerRow, columns }: Pick<Table, "area" | "headerRow" | "columns">,
): readonly string[] {
  if (!headerRow && columns.length === area.columns) return columns;
  return Array.from({ length: area.columns }, (_, index) => {
    const head = headerRow && readValue(worksheet.getCellRaw(area.row, area.column + index));
    return headerRow ? String(head ?? "") : `Column${index + 1}`;
  });
}
