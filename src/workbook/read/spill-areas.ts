import { addressOf } from "../address";
import type { Area } from "../book";
import { WorkbookRefusal } from "../workbook-refusal";

/**
 * Says of each cell whether an array formula fills it, row by row from the top. Only areas that
 * reach into the row are looked at, so that many formulas over long columns cost no more than few.
 */
export class SpillAreas {
  readonly #byRow = new Map<number, Area[]>();
  /** Those that reach into the row at hand, from left to right; none overlap. */
  #active: Area[] = [];
  #starts: number[];

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
    if (this.#active.length > 0)
      this.#active = this.#active.filter((area) => area.row + area.rows > row);
    for (let start = this.#starts.at(-1); start !== undefined && start <= row; ) {
      this.#starts.pop();
      const joining = (this.#byRow.get(start) ?? []).filter((area) => area.row + area.rows > row);
      if (joining.length > 0) this.#join(joining);
      start = this.#starts.at(-1);
    }
  }

  #join(areas: readonly Area[]): void {
    this.#active = [...this.#active, ...areas].sort((a, b) => a.column - b.column);
    this.#active.forEach((area, index) => {
      const next = this.#active[index + 1];
      if (next && next.column < area.column + area.columns)
        throw new WorkbookRefusal(
          `The file is damaged: two array formulas overlap at ${addressOf(Math.max(area.row, next.row), next.column)}.`,
        );
    });
  }

  /** The area of the current row that holds the column. */
  at(column: number): Area | undefined {
    let low = 0;
    let high = this.#active.length - 1;
    while (low <= high) {
      const middle = (low + high) >> 1;
      const area = this.#active[middle] as Area;
      if (column < area.column) high = middle - 1;
      else if (column >= area.column + area.columns) low = middle + 1;
      else return area;
    }
    return undefined;
  }
}
