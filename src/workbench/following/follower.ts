/** Areas of the grid that stay with their cells when rows, columns and cells are inserted, removed or moved. */
import { ICommandService, type IRange, UndoCommandId } from "@univerjs/core";
import {
  InsertColMutation,
  InsertRowMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import type { Area } from "../../workbook/book";
import type { Grid } from "../grid";
import { inserted, type Lines, moved, removed } from "./lines";

/** Where an area now is. Without rows or columns its cells are gone, and it tells where they were. */
export interface Followed {
  readonly sheetId: string;
  readonly area: Area;
}

export const isGone = ({ area }: Followed) => area.rows === 0 || area.columns === 0;

export type Change = (followed: Followed) => Followed;

interface Done {
  readonly id: string;
  /** All areas as they were before it. */
  readonly before: readonly Followed[];
}

export class Follower {
  #areas: Followed[] = [];
  #done: Done[] = [];
  /** Whether something was undone that was not known to be done: what was before is lost. */
  #lost = false;

  constructor({ injector }: Pick<Grid, "injector">) {
    const commands = injector.get(ICommandService);
    let undoing = false;
    commands.beforeCommandExecuted(({ id }) => {
      undoing ||= id === UndoCommandId;
    });
    commands.onCommandExecuted(({ id, params }) => {
      if (id === UndoCommandId) undoing = false;
      const change = changeBy(id, params);
      if (change === undefined) return;
      if (undoing && this.#takeBack(id)) return;
      this.#done.push({ id, before: [...this.#areas] });
      this.#areas = this.#areas.map(change);
    });
  }

  /** Whether rows or columns stand elsewhere than in the beginning. */
  get linesMoved(): boolean {
    return this.#lost || this.#done.some(({ id }) => id !== MoveRangeMutation.id);
  }

  /** From now on; gives where the area is whenever it is asked. */
  follow(sheetId: string, area: Area): () => Followed {
    const index = this.#areas.push({ sheetId, area }) - 1;
    return () => this.#areas[index] as Followed;
  }

  forgetAll(): void {
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

export function changeBy(id: string, params: unknown): Change | undefined {
  if (!(id in opposite)) return undefined;
  const told = params as Told;
  if (id === MoveRangeMutation.id) return carried(told);
  const byRows = id === InsertRowMutation.id || id === RemoveRowMutation.id;
  const rows = byRows || id === MoveRowsMutation.id;
  const change = (lines: Lines): Lines => {
    const { at, count } = span(told.range ?? told.sourceRange, rows);
    if (id === InsertRowMutation.id || id === InsertColMutation.id)
      return inserted(lines, at, count);
    if (id === RemoveRowMutation.id || id === RemoveColMutation.id)
      return removed(lines, at, count);
    return moved(lines, at, count, span(told.targetRange, rows).at);
  };
  return (followed) =>
    followed.sheetId === told.subUnitId ? shifted(followed, rows, change) : followed;
}

const span = ({ startRow, endRow, startColumn, endColumn }: IRange, rows: boolean) =>
  rows
    ? { at: startRow, count: endRow - startRow + 1 }
    : { at: startColumn, count: endColumn - startColumn + 1 };

function shifted({ sheetId, area }: Followed, rows: boolean, change: (lines: Lines) => Lines) {
  const { start, size } = change(
    rows ? { start: area.row, size: area.rows } : { start: area.column, size: area.columns },
  );
  const moved = rows ? { row: start, rows: size } : { column: start, columns: size };
  return { sheetId, area: { ...area, ...moved } };
}

/** Cells that are cut and put elsewhere take with them what lies wholly among them. */
function carried({ fromRange, toRange, from, to }: Told): Change {
  const down = toRange.startRow - fromRange.startRow;
  const right = toRange.startColumn - fromRange.startColumn;
  return (followed) => {
    const { sheetId, area } = followed;
    const inside =
      sheetId === from.subUnitId &&
      area.row >= fromRange.startRow &&
      area.row + area.rows - 1 <= fromRange.endRow &&
      area.column >= fromRange.startColumn &&
      area.column + area.columns - 1 <= fromRange.endColumn;
    if (!inside) return followed;
    const place = { row: area.row + down, column: area.column + right };
    return { sheetId: to.subUnitId, area: { ...area, ...place } };
  };
}
