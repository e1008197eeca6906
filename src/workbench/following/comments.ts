/** What somebody noted at cells, kept at these cells. */
import { type CellPlace, keyOfPlace } from "../../engine/cell-place";
import type { CellComment } from "../../workbook/book";
import type { NameOf } from "./charts";
import type { Follower } from "./follower";
import { type OnSheet, overParts, type RuleNow, replaced } from "./rules";

export class FollowedComments {
  #comments: RuleNow<CellComment>[] = [];
  /** By the keys of their cells, as long as no cell has moved. */
  #atCells = new Map<string, CellComment>();
  #version = -1;

  constructor(private readonly follower: Follower) {}

  take(sheetId: string, comments: readonly CellComment[]): void {
    for (const comment of comments) {
      const cell = this.follower.followParts({ sheetId, area: comment.area, bond: "noted" });
      this.#comments.push(overParts(cell, () => (area) => ({ ...comment, area })));
    }
  }

  forgetAll(): void {
    this.#comments = [];
  }

  now(nameOf: NameOf): OnSheet<CellComment>[] {
    return replaced(this.#comments.flatMap((comment) => comment(nameOf)));
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
}
