/** Areas of the grid that stay with their cells when rows, columns and cells are inserted, removed or moved. */
import { CommandType, ICommandService, type IRange, UndoCommandId } from "@univerjs/core";
import {
  InsertColMutation,
  InsertRowMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import { areaOf } from "../../engine/ranges";
import { common, holdsCell } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import type { Grid } from "../grid/grid";
import { inserted, type Lines, moved, removed, strayed } from "./lines";

/** Where an area now is. Without rows or columns its cells are gone, and it tells where they were. */
export interface Followed {
  readonly sheetId: string;
  readonly area: Area;
  /** Which move of cells put it there, counted from 1: what it lies on was there before. */
  readonly putBy?: number;
  /** One cell that goes with its row where rows are sorted. */
  readonly withRow?: boolean;
}

/** Rows of an area in another order: where each of those that move stood, and where it stands then. */
export interface SortedRows {
  readonly sheetId: string;
  readonly area: Area;
  readonly moves: readonly (readonly [from: number, to: number])[];
}

export const SORT_ROWS = "dosewright.mutation.sort-rows";

export const isGone = ({ area }: Followed) => area.rows === 0 || area.columns === 0;

/** Where the cells then are. What was moved away from the others comes behind them. */
export type Change = (followed: Followed) => readonly Followed[];

interface Done {
  readonly id: string;
  /** All areas as they were before it. */
  readonly before: readonly (readonly Followed[])[];
}

export class Follower {
  /** The parts of each, most often one. */
  #areas: (readonly Followed[])[] = [];
  #done: Done[] = [];
  /** Whether something was undone that was not known to be done: what was before is lost. */
  #lost = false;
  #moves = 0;
  #version = 0;

  constructor({ injector }: Pick<Grid, "injector">) {
    const commands = injector.get(ICommandService);
    // The cells are written by the grid's own; this one is for those who follow them.
    commands.registerCommand({ id: SORT_ROWS, type: CommandType.MUTATION, handler: () => true });
    let undoing = false;
    commands.beforeCommandExecuted(({ id }) => {
      undoing ||= id === UndoCommandId;
    });
    commands.onCommandExecuted(({ id, params }) => {
      if (id === UndoCommandId) undoing = false;
      const change = changeBy(id, params, this.#moves + 1);
      if (change === undefined) return;
      this.#version++;
      if (undoing && this.#takeBack(id)) return;
      if (id === MoveRangeMutation.id) this.#moves++;
      this.#done.push({ id, before: [...this.#areas] });
      this.#areas = this.#areas.map((parts) => parts.flatMap(change));
    });
  }

  /** Whether rows or columns stand elsewhere than in the beginning. */
  get linesMoved(): boolean {
    const inLines = (id: string) => id !== MoveRangeMutation.id && id !== SORT_ROWS;
    return this.#lost || this.#done.some(({ id }) => inLines(id));
  }

  /** Another one whenever an area may be elsewhere, or there are others. */
  get version(): number {
    return this.#version;
  }

  /** From now on; gives where the area is whenever it is asked. */
  follow(sheetId: string, area: Area): () => Followed {
    const parts = this.followParts(sheetId, area);
    return () => parts()[0] as Followed;
  }

  /** With the cells that were moved away from the others. */
  followParts(sheetId: string, area: Area, withRow = false): () => readonly Followed[] {
    this.#version++;
    const index = this.#areas.push([{ sheetId, area, ...(withRow && { withRow }) }]) - 1;
    return () => this.#areas[index] as readonly Followed[];
  }

  forgetAll(): void {
    this.#version++;
    this.#areas = [];
    this.#done = [];
    this.#lost = false;
  }

  /** What was removed and comes back by undoing, comes back as it was. */
  #takeBack(id: string): boolean {
    const last = this.#done.pop();
    if (last === undefined || opposite[last.id] !== id) {
      this.#done = [];
      this.#lost = true;
      return false;
    }
    this.#areas = this.#areas.map((area, index) => last.before[index] ?? area);
    return true;
  }
}

const opposite: Readonly<Record<string, string>> = {
  [InsertRowMutation.id]: RemoveRowMutation.id,
  [RemoveRowMutation.id]: InsertRowMutation.id,
  [InsertColMutation.id]: RemoveColMutation.id,
  [RemoveColMutation.id]: InsertColMutation.id,
  [MoveRowsMutation.id]: MoveRowsMutation.id,
  [MoveColsMutation.id]: MoveColsMutation.id,
  [MoveRangeMutation.id]: MoveRangeMutation.id,
  [SORT_ROWS]: SORT_ROWS,
};

/** What the grid's mutations tell of where they happen. */
interface Told {
  readonly subUnitId: string;
  readonly range: IRange;
  readonly sourceRange: IRange;
  readonly targetRange: IRange;
  readonly fromRange: IRange;
  readonly toRange: IRange;
  readonly from: { readonly subUnitId: string };
  readonly to: { readonly subUnitId: string };
}

export function changeBy(id: string, params: unknown, move = 1): Change | undefined {
  if (!(id in opposite)) return undefined;
  if (id === SORT_ROWS) return sorted(params as SortedRows);
  const told = params as Told;
  if (id === MoveRangeMutation.id) return carried(told, move);
  const byRows = id === InsertRowMutation.id || id === RemoveRowMutation.id;
  const rows = byRows || id === MoveRowsMutation.id;
  const change = (lines: Lines): readonly Lines[] => {
    const { at, count } = span(told.range ?? told.sourceRange, rows);
    if (id === InsertRowMutation.id || id === InsertColMutation.id)
      return [inserted(lines, at, count)];
    if (id === RemoveRowMutation.id || id === RemoveColMutation.id)
      return [removed(lines, at, count)];
    const move = [lines, at, count, span(told.targetRange, rows).at] as const;
    return [moved(...move), strayed(...move) ?? []].flat();
  };
  return (followed) =>
    followed.sheetId === told.subUnitId ? shifted(followed, rows, change) : [followed];
}

const span = ({ startRow, endRow, startColumn, endColumn }: IRange, rows: boolean) =>
  rows
    ? { at: startRow, count: endRow - startRow + 1 }
    : { at: startColumn, count: endColumn - startColumn + 1 };

function shifted(
  { area, ...kept }: Followed,
  rows: boolean,
  change: (lines: Lines) => readonly Lines[],
): Followed[] {
  const lines = rows
    ? { start: area.row, size: area.rows }
    : { start: area.column, size: area.columns };
  return change(lines).map(({ start, size }) => {
    const moved = rows ? { row: start, rows: size } : { column: start, columns: size };
    return { ...kept, area: { ...area, ...moved } };
  });
}

/** Cells that are cut and put elsewhere take with them what lies among them; of what lies among others, too, a part. */
function carried({ fromRange, toRange, from, to }: Told, putBy: number): Change {
  const down = toRange.startRow - fromRange.startRow;
  const right = toRange.startColumn - fromRange.startColumn;
  return (followed) => {
    const { sheetId, area } = followed;
    const taken = sheetId === from.subUnitId ? common(area, areaOf(fromRange)) : undefined;
    if (!taken) return [followed];
    const place = { row: taken.row + down, column: taken.column + right };
    const moved = { ...followed, sheetId: to.subUnitId, area: { ...taken, ...place }, putBy };
    return sameSize(taken, area) ? [moved] : [followed, moved];
  };
}

/** Rules belong to their places, and stay. */
function sorted({ sheetId, area, moves }: SortedRows): Change {
  const rows = new Map(moves);
  return (followed) => {
    const { row, column } = followed.area;
    const to = rows.get(row);
    const goes = followed.withRow && followed.sheetId === sheetId && holdsCell(area, row, column);
    return [
      goes && to !== undefined ? { ...followed, area: { ...followed.area, row: to } } : followed,
    ];
  };
}

const sameSize = (one: Area, other: Area) =>
  one.rows === other.rows && one.columns === other.columns;
