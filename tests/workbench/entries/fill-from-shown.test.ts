import { expect, test } from "vitest";
import { countInOrder } from "../../../src/workbench/entries/fill-from-shown";

test("Sources are counted among the rows that show, of whatever kind they are.", () => {
  const [number, text] = [
    { data: [20, 60], index: [0, 5] },
    { data: ["dose"], index: [2] },
  ];
  countInOrder([{ number: [number], other: [text] }], [1, 3, 6]);
  expect([number.index, text.index]).toEqual([[0, 2], [1]]);
});

test("Those of rows that follow each other stay as they are.", () => {
  const sources = { data: [20, 40], index: [0, 1] };
  countInOrder([{ number: [sources] }], [7, 8]);
  expect(sources.index).toEqual([0, 1]);
});
