import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  inserted,
  type Lines,
  moved,
  removed,
  strayed,
} from "../../../src/workbench/following/lines";

const lines = (start: number, size: number): Lines => ({ start, size });

describe("rows and columns", () => {
  test.each([
    ["before", 2, lines(7, 3)],
    ["at the first", 4, lines(7, 3)],
    ["between the first and the second", 5, lines(4, 6)],
    ["before the last", 6, lines(4, 6)],
    ["behind the last", 7, lines(4, 3)],
  ])("three inserted %s", (_, at, then) => {
    expect(inserted(lines(4, 3), at, 3)).toEqual(then);
  });

  test.each([
    ["before", 0, 2, lines(2, 3)],
    ["over the first", 3, 2, lines(3, 2)],
    ["within", 5, 1, lines(4, 2)],
    ["over the last", 6, 5, lines(4, 2)],
    ["behind", 7, 2, lines(4, 3)],
    ["all, and more", 3, 9, lines(3, 0)],
  ])("removed %s", (_, at, count, then) => {
    expect(removed(lines(4, 3), at, count)).toEqual(then);
  });

  test.each([
    ["with all of them, down", 4, 3, 10, lines(7, 3)],
    ["with all of them, up", 3, 5, 0, lines(1, 3)],
    ["from above to below", 0, 2, 9, lines(2, 3)],
    ["from below to above", 9, 2, 1, lines(6, 3)],
    ["among themselves", 4, 1, 7, lines(4, 3)],
    ["out of them", 5, 1, 12, lines(4, 2)],
    ["in between them", 12, 1, 5, lines(4, 4)],
  ])("moved %s", (_, at, count, to, then) => {
    expect(moved(lines(4, 3), at, count, to)).toEqual(then);
  });

  test.each([
    ["with all of them", 4, 3, 10, undefined],
    ["out of them, down", 5, 1, 12, lines(11, 1)],
    ["out of them, up", 5, 4, 0, lines(0, 2)],
    ["among themselves", 4, 1, 7, undefined],
    ["elsewhere", 9, 2, 1, undefined],
  ])("stray, moved %s", (_, at, count, to, then) => {
    expect(strayed(lines(4, 3), at, count, to)).toEqual(then);
  });

  test("those that stay are found where a list of them has them", () => {
    const some = fc.integer({ min: 0, max: 12 });
    fc.assert(
      fc.property(some, some, some, fc.integer({ min: 1, max: 4 }), (start, size, at, count) => {
        const all = Array.from({ length: 40 }, (_, index) => index);
        const own = new Set(all.slice(start, start + size));
        const places = (list: readonly number[]) =>
          list.flatMap((line, place) => (own.has(line) ? [place] : []));
        const less = places(all.toSpliced(at, count));
        expect(removed(lines(start, size), at, count).size).toBe(less.length);
        if (less.length > 0) expect(removed(lines(start, size), at, count).start).toBe(less[0]);
        const more = places(all.toSpliced(at, 0, ...Array<number>(count).fill(-1)));
        const { start: first, size: length } = inserted(lines(start, size), at, count);
        if (size > 0) expect([first, first + length - 1]).toEqual([more[0], more.at(-1)]);
      }),
    );
  });
});
