import { addressOf } from "../address";
import type { Area } from "../book";
import { WorkbookRefusal } from "../workbook-refusal";

/**
 * Says of each cell whether an array formula fills it, row by row from the top. What has ended is only
 * taken away where something new stands in its columns, so that many formulas over long columns, and
 * many short ones beside them, cost no more than few.
 */
export class SpillAreas {
  readonly #byRow = new Map<number, Area[]>();
  readonly #starts: number[];
  /** From left to right; none overlap. Some may have ended above the row at hand. */
  readonly #areas: Area[] = [];
  #row = 0;

  constructor(areas: readonly Area[]) {
    for (const area of areas) {
      const same = this.#byRow.get(area.row);
      if (same) same.push(area);
      else this.#byRow.set(area.row, [area]);
    }
    this.#starts = [...this.#byRow.keys()].sort((a, b) => b - a);
  }

  /** Moves on to a row; rows come in ascending order. */
  enter(row: number): void {
    this.#row = row;
    for (let start = this.#starts.at(-1); start !== undefined && start <= row; ) {
      for (const area of this.#byRow.get(start) ?? []) if (this.#reaches(area)) this.#join(area);
      this.#starts.pop();
      start = this.#starts.at(-1);
    }
  }

  #reaches(area: Area): boolean {
    return area.row + area.rows > this.#row;
  }

  #join(area: Area): void {
    const at = this.#firstBeyond(area.column);
    let ended = 0;
    for (
      let other = this.#areas[at];
      other !== undefined && other.column < area.column + area.columns;
      other = this.#areas[at + ++ended]
    )
      if (this.#reaches(other))
        throw new WorkbookRefusal(
          `The file is damaged: two array formulas overlap at ${addressOf(Math.max(area.row, other.row), Math.max(area.column, other.column))}.`,
        );
    this.#areas.splice(at, ended, area);
  }

  /** The place of the first area that does not end left of the column. */
  #firstBeyond(column: number): number {
    let low = 0;
    let high = this.#areas.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      const area = this.#areas[middle] as Area;
      if (area.column + area.columns <= column) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** The area of the current row that holds the column. */
  at(column: number): Area | undefined {
    const area = this.#areas[this.#firstBeyond(column)];
    return area !== undefined && area.column <= column && this.#reaches(area) ? area : undefined;
  }
}
