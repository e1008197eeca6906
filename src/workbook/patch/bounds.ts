import type { Area } from "../book";

/** The smallest area that holds all cells of a sheet. */
export class Bounds {
  #top = Number.POSITIVE_INFINITY;
  #left = Number.POSITIVE_INFINITY;
  #bottom = -1;
  #right = -1;

  add(row: number, column: number): void {
    this.#top = Math.min(this.#top, row);
    this.#left = Math.min(this.#left, column);
    this.#bottom = Math.max(this.#bottom, row);
    this.#right = Math.max(this.#right, column);
  }

  area(): Area {
    if (this.#bottom < 0) return { row: 0, column: 0, rows: 1, columns: 1 };
    const rows = this.#bottom - this.#top + 1;
    return { row: this.#top, column: this.#left, rows, columns: this.#right - this.#left + 1 };
  }
}
