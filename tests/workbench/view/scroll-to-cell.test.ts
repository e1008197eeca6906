import { expect, test } from "vitest";
import { scrolledTo } from "../../../src/workbench/view/scroll-to-cell";

/** Columns 90, 60, 100, 80 and 70 wide, of which the first is frozen; 200 are seen of the others. */
const line = { ends: [90, 150, 250, 330, 400], frozen: 1, scrolled: 0, seen: 200 };

test.each([
  ["what is seen stays", 0, 2, false, 0],
  ["what is hidden behind the frozen column comes right beside it", 130, 2, false, 60],
  ["also where it is hidden in part", 70, 2, false, 60],
  ["what is too far comes with the whole columns before it", 0, 3, false, 60],
  ["or alone", 0, 4, false, 160],
  ["or first, if so asked", 0, 2, true, 60],
  ["a frozen column moves nothing", 70, 0, false, 70],
  ["but the rest back to its beginning, if it shall come first", 70, 0, true, 0],
])("%s", (_, scrolled, index, first, expected) => {
  expect(scrolledTo({ ...line, scrolled }, index, first)).toBe(expected);
});

test("one that is wider than what is seen begins where that begins", () => {
  expect(scrolledTo({ ...line, seen: 50 }, 2)).toBe(60);
});
