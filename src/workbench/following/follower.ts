/** Areas of the grid that stay with their cells when rows, columns and cells are inserted, removed or moved. */
import { CommandType, ICommandService, UndoCommandId } from "@univerjs/core";
import { MoveRangeMutation } from "@univerjs/sheets";
import type { Area } from "../../workbook/book";
import type { Grid } from "../grid/grid";
import { type Cut, changeBy, cutBy, makingRoom, opposite, SORT_ROWS } from "./changes";
import type { Followed } from "./followed";

interface Done {
  readonly id: string;
  /** All areas as they were before it. */
  readonly before: readonly (readonly Followed[])[];
  readonly cut: Cut | undefined;
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
      const move = this.#moves + 1;
      const change = changeBy(id, params, move);
      if (change === undefined) return;
      this.#version++;
      if (undoing && this.#takeBack(id)) return;
      const cut = cutBy(id, params);
      if (cut) this.#moves = move;
      this.#done.push({ id, before: [...this.#areas], cut });
      const rules = cut ? this.#areas.flat().filter(({ bond }) => bond === "ruled") : [];
      const moved = makingRoom(change, rules, move);
      this.#areas = this.#areas.map((parts) => parts.flatMap(moved));
    });
  }

  /** Whether rows or columns stand elsewhere than in the beginning. */
  get linesMoved(): boolean {
    const inLines = (id: string) => id !== MoveRangeMutation.id && id !== SORT_ROWS;
    return this.#lost || this.#done.some(({ id }) => inLines(id));
  }

  /** Where cells of a sheet stood that were put elsewhere, as long as no line has moved. */
  cutFrom(sheetId: string): Area[] {
    return this.#done.flatMap(({ cut }) => (cut?.sheetId === sheetId ? [cut.area] : []));
  }

  /** Another one whenever an area may be elsewhere, or there are others. */
  get version(): number {
    return this.#version;
  }

  /** From now on; gives where the area is whenever it is asked. */
  follow(sheetId: string, area: Area): () => Followed {
    const parts = this.followParts({ sheetId, area, bond: "named" });
    return () => parts()[0] as Followed;
  }

  /** With the cells that were moved away from the others. */
  followParts(followed: Followed): () => readonly Followed[] {
    this.#version++;
    const index = this.#areas.push([followed]) - 1;
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
