/** What somebody noted at cells, kept at these cells; written, changed and removed in steps to undo. */
import { CommandType, ICommandService, type IMutationInfo } from "@univerjs/core";
import { type CellPlace, keyOfPlace } from "../../engine/cell-place";
import { holdsCell, overlap } from "../../workbook/areas";
import type { CellComment } from "../../workbook/book";
import type { Grid } from "../grid/grid";
import type { Step } from "../grid/one-step";
import type { NameOf } from "./charts";
import type { Followed } from "./followed";
import type { Follower } from "./follower";
import { type OnSheet, overParts } from "./rules";

export const SET_COMMENTS = "dosewright.mutation.set-comments";

/** What it says. One that is removed is followed on, as it may come back; one that was never written is not. */
type State = CellComment | "removed" | "unwritten";

interface CommentStates {
  readonly unitId: string;
  readonly subUnitId: string;
  /** By their numbers. */
  readonly states: readonly (readonly [number, State])[];
}

interface Entry {
  /** Undefined while it is removed. */
  comment: CellComment | undefined;
  readonly cells: () => readonly Followed[];
}

export class FollowedComments {
  readonly #entries = new Map<number, Entry>();
  #count = 0;
  /** By the keys of their cells, as long as no cell has moved. */
  #atCells = new Map<string, CellComment>();
  #version = -1;

  constructor(
    { injector }: Pick<Grid, "injector">,
    private readonly follower: Follower,
  ) {
    injector.get(ICommandService).registerCommand({
      id: SET_COMMENTS,
      type: CommandType.MUTATION,
      handler: (_, params) => this.#set(params as CommentStates),
    });
  }

  take(sheetId: string, comments: readonly CellComment[]): void {
    for (const comment of comments) this.#put(this.#count++, sheetId, comment);
  }

  forgetAll(): void {
    this.#entries.clear();
    this.#version = -1;
  }

  now(nameOf: NameOf): OnSheet<CellComment>[] {
    return uncovered(
      [...this.#entries.values()].flatMap(({ comment, cells }) =>
        comment ? overParts(cells, ({ area }) => ({ ...comment, area }))(nameOf) : [],
      ),
    );
  }

  at(place: CellPlace): CellComment | undefined {
    const { version } = this.follower;
    if (version !== this.#version) {
      const entries = this.now(() => "").flatMap(({ sheetId, area: { row, column }, rule }) =>
        rule ? [[keyOfPlace({ sheetId, row, column }), rule] as const] : [],
      );
      this.#atCells = new Map(entries);
      this.#version = version;
    }
    return this.#atCells.size === 0 ? undefined : this.#atCells.get(keyOfPlace(place));
  }

  /** What makes the comment at a cell say this, or be none where that is blank; and what takes that back. */
  step(unitId: string, { sheetId, row, column }: CellPlace, text: string): Step {
    const shown = this.at({ sheetId, row, column });
    const isThere = ({ cells }: Entry) =>
      cells().some((part) => part.sheetId === sheetId && holdsCell(part.area, row, column));
    const there = [...this.#entries].flatMap(([key, entry]) =>
      entry.comment && isThere(entry) ? [[key, entry.comment] as const] : [],
    );
    const mutation = (states: CommentStates["states"]): IMutationInfo => ({
      id: SET_COMMENTS,
      params: { unitId, subUnitId: sheetId, states } satisfies CommentStates,
    });
    // With it go those that it was put over: they would come to light.
    if (text === "")
      return {
        todo: mutation(there.map(([key]) => [key, "removed"])),
        undo: mutation(there),
      };
    const its = there.filter(([, { id }]) => id === shown?.id);
    if (shown)
      return {
        todo: mutation(its.map(([key, comment]) => [key, { ...comment, text }])),
        undo: mutation(its),
      };
    const key = this.#count++;
    const area = { row, column, rows: 1, columns: 1 };
    return {
      todo: mutation([[key, { area, text, id: `written here ${key}` }]]),
      undo: mutation([[key, "unwritten"]]),
    };
  }

  #put(key: number, sheetId: string, comment: CellComment): void {
    const cells = this.follower.followParts({ sheetId, area: comment.area, bond: "noted" });
    this.#entries.set(key, { comment, cells });
  }

  #set({ subUnitId, states }: CommentStates): boolean {
    for (const [key, state] of states) {
      const entry = this.#entries.get(key);
      if (state === "unwritten") this.#entries.delete(key);
      else if (entry) entry.comment = state === "removed" ? undefined : state;
      else if (state !== "removed") this.#put(key, subUnitId, state);
    }
    this.#version = -1;
    return true;
  }
}

/** Where another was put, it is the one that is seen. */
function uncovered<T>(comments: readonly OnSheet<T>[]): OnSheet<T>[] {
  const put = comments.filter(({ putBy }) => putBy !== undefined);
  return comments.filter(({ sheetId, area, putBy = 0 }) => {
    const covers = (one: OnSheet<T>) =>
      one.sheetId === sheetId && (one.putBy ?? 0) > putBy && overlap(one.area, area);
    return !put.some(covers);
  });
}
