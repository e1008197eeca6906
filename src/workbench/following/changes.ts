/** What becomes of followed cells when rows, columns or cells are inserted, removed or moved in the grid. */
import type { IRange } from "@univerjs/core";
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
import { common, holdsCell, without } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { spansBody } from "../../workbook/layout/filled-in";
import { type Followed, isGone } from "./followed";
import { inserted, type Lines, moved, removed, strayed } from "./lines";
import { beside, seenFrom } from "./reads";

/** Rows of an area in another order: where each of those that move stood, and where it stands then. */
export interface SortedRows {
  readonly sheetId: string;
  readonly area: Area;
  readonly moves: readonly (readonly [from: number, to: number])[];
}

/**
 * Of rows that are put in: the bodies of tables that take them in. What stands over all of such a body goes on
 * doing so, also where the rows come to its edge. The grid hands the range that carries this to all who follow.
 */
export interface TakenIn {
  readonly bodies?: readonly Area[];
}

export const SORT_ROWS = "dosewright.mutation.sort-rows";

/** Where the cells then are. What was moved away from the others comes behind them. */
export type Change = (followed: Followed) => readonly Followed[];

/** What takes back what each mutation does. */
export const opposite: Readonly<Record<string, string>> = {
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
  readonly range: IRange & TakenIn;
  readonly sourceRange: IRange;
  readonly targetRange: IRange;
  readonly fromRange: IRange;
  readonly toRange: IRange;
  readonly from: { readonly subUnitId: string };
  readonly to: { readonly subUnitId: string };
}

/** Cells that are put elsewhere, where they stood. */
export interface Cut {
  readonly sheetId: string;
  readonly area: Area;
}

export function cutBy(id: string, params: unknown): Cut | undefined {
  if (id !== MoveRangeMutation.id) return undefined;
  const { from, fromRange } = params as Told;
  return { sheetId: from.subUnitId, area: areaOf(fromRange) };
}

export function changeBy(id: string, params: unknown, move = 1): Change | undefined {
  const change = changeOf(id, params, move);
  if (!change) return undefined;
  return (followed) =>
    change(followed).map((part) => {
      if (!part.reads) return part;
      const reads = part.reads.map((read) => ({ ...read, ...change(read)[0] }));
      return { ...part, reads: reads.map((read) => beside(read, part)) };
    });
}

function changeOf(id: string, params: unknown, move: number): Change | undefined {
  if (!(id in opposite)) return undefined;
  if (id === SORT_ROWS) return sorted(params as SortedRows);
  const told = params as Told;
  if (id === MoveRangeMutation.id) return carried(told, move);
  const byRows = id === InsertRowMutation.id || id === RemoveRowMutation.id;
  const rows = byRows || id === MoveRowsMutation.id;
  const { at, count } = span(told.range ?? told.sourceRange, rows);
  const change = (lines: Lines): readonly Part[] => {
    const { start } = lines;
    if (id === InsertRowMutation.id || id === InsertColMutation.id)
      return [{ now: inserted(lines, at, count), first: start }];
    const left = start >= at && start < at + count ? at + count : start;
    if (id === RemoveRowMutation.id || id === RemoveColMutation.id)
      return [{ now: removed(lines, at, count), first: left }];
    const move = [lines, at, count, span(told.targetRange, rows).at] as const;
    const [now, away] = [moved(...move), strayed(...move)];
    if (!away) return [{ now, first: start }];
    return [
      { now, first: left },
      { now: away, first: Math.max(start, at) },
    ];
  };
  const { bodies = [] } = id === InsertRowMutation.id ? told.range : {};
  const withThem = ({ start, size }: Lines): readonly Part[] => [
    { now: { start, size: size + count }, first: start },
  ];
  return (followed) => {
    if (followed.sheetId !== told.subUnitId) return [followed];
    const takes = bodies.some((body) => spansBody(followed.area, body));
    return shifted(followed, rows, takes ? withThem : change);
  };
}

const span = ({ startRow, endRow, startColumn, endColumn }: IRange, rows: boolean) =>
  rows
    ? { at: startRow, count: endRow - startRow + 1 }
    : { at: startColumn, count: endColumn - startColumn + 1 };

/** Lines that stay together, and which of them was the first before. */
interface Part {
  readonly now: Lines;
  readonly first: number;
}

function shifted(
  followed: Followed,
  rows: boolean,
  change: (lines: Lines) => readonly Part[],
): Followed[] {
  const { area } = followed;
  const lines = rows
    ? { start: area.row, size: area.rows }
    : { start: area.column, size: area.columns };
  return change(lines).map(({ now: { start, size }, first }) => {
    const moved = rows ? { row: start, rows: size } : { column: start, columns: size };
    const part = partOf(followed, { ...area, ...(rows ? { row: first } : { column: first }) });
    return { ...part, area: { ...area, ...moved } };
  });
}

/**
 * Cells that are cut and put elsewhere take with them what lies among them; of what lies among others, too, a
 * part. What names cells stays with the others as a whole; a rule leaves them.
 */
function carried({ fromRange, toRange, from, to }: Told, putBy: number): Change {
  const down = toRange.startRow - fromRange.startRow;
  const right = toRange.startColumn - fromRange.startColumn;
  return (followed) => {
    const { sheetId, area, bond } = followed;
    const taken = sheetId === from.subUnitId ? common(area, areaOf(fromRange)) : undefined;
    if (!taken) return [followed];
    const place = { row: taken.row + down, column: taken.column + right };
    const moved = { ...partOf(followed, taken), sheetId: to.subUnitId, putBy };
    const there = { ...moved, area: { ...taken, ...place } };
    const left = without(area, taken);
    if (left.length === 0) return [there];
    return [...(bond === "named" ? [followed] : left.map((its) => partOf(followed, its))), there];
  };
}

/** The change, and that rules leave the cells where the move puts others of their kind. */
export function makingRoom(change: Change, rules: readonly Followed[], move = 1): Change {
  const put = rules.flatMap(change).filter((part) => part.putBy === move && !isGone(part));
  if (put.length === 0) return change;
  return (followed) =>
    change(followed).flatMap((part) => {
      if (part.bond !== "ruled" || part.putBy === move) return [part];
      const covers = put.filter(
        ({ sheetId, kind }) => sheetId === part.sheetId && kind === part.kind,
      );
      const left = covers.reduce(
        (areas, cover) => areas.flatMap((area) => without(area, cover.area)),
        [part.area],
      );
      return left.map((area) => (area === part.area ? part : partOf(part, area)));
    });
}

/** With what it reads from there. */
const partOf = (followed: Followed, area: Area): Followed => ({
  ...followed,
  area,
  ...(followed.reads && { reads: followed.reads.map((read) => seenFrom(read, followed, area)) }),
});

/** Rules belong to their places, and stay. */
function sorted({ sheetId, area, moves }: SortedRows): Change {
  const rows = new Map(moves);
  return (followed) => {
    const { row, column } = followed.area;
    const to = rows.get(row);
    const goes =
      followed.bond === "noted" && followed.sheetId === sheetId && holdsCell(area, row, column);
    return [
      goes && to !== undefined ? { ...followed, area: { ...followed.area, row: to } } : followed,
    ];
  };
}
