import { describe, expect, test } from "vitest";
import {
  blank,
  column,
  emulateExcel,
  type HostCell,
  type HostError,
  row,
} from "../host/emulated-excel";

const excel = emulateExcel();
const furnish = [row(0.55, 0.25, 0.2), row(1.5, 8, 12), row(8, 10, 1.667), row(20, 11, 1)];
const ordered = (dosePosition: unknown, componentPositions: unknown) =>
  excel.one("PARTITION.ORDERED", 7, dosePosition, componentPositions, 0.03, ...furnish);

test.each([
  [0, "dosePositions is 0 or blank."],
  [1.5, "dosePositions is 1.5."],
  [51, "dosePositions is 51."],
])("PARTITION.ORDERED refuses a position of %s and says which there are", (position, what) => {
  expect((ordered(position, row(1, 1, 1)) as HostError).message).toBe(
    `${what} Give a whole number from 1 to 50 [position].`,
  );
});

test("PARTITION.ORDERED says which component stands at no position", () => {
  expect((ordered(1, row(1, 2.5, 2)) as HostError).message).toBe(
    "componentPositions (2 of 3) is 2.5. Give a whole number from 1 to 50 [position].",
  );
});

const messageOf = (answer: HostCell[][]) => (answer.flat()[0] as HostError).message;
const NONE_AT_TWO =
  "The consistency at position 2, where there are solids, is 0 or blank. Give a fraction above 0, e.g. 0.03 for 3 %.";

describe.each([
  ["null", null],
  ["0", 0],
  ["an empty text", ""],
] as const)("a blank consistency that arrives as %s", (_, as) => {
  const host = emulateExcel(as);
  const walk = (componentPositions: unknown[][], ...consistencies: unknown[]) =>
    host.call("PARTITION.ORDERED", 7, 1, componentPositions, row(...consistencies), ...furnish);

  test("is as good as any where no solids are yet, and beyond the last position", () => {
    expect(walk(row(2, 2, 3), blank, 0.03, 0.008)).toEqual(walk(row(2, 2, 3), 0.2, 0.03, 0.008));
    expect(walk(row(1, 1, 1), 0.03, blank, blank)).toEqual(walk(row(1, 1, 1), 0.03));
  });

  test("was forgotten where there are solids, and is no one for all", () => {
    expect(messageOf(walk(row(1, 1, 2), 0.03, blank))).toBe(NONE_AT_TWO);
    expect(messageOf(walk(row(2, 2, 3), blank, blank, 0.008))).toBe(NONE_AT_TWO);
  });
});

test("PARTITION.ORDERED says that a log is no list of doses, before it says what a cell of it holds", () => {
  const log = column(7, "stopped", 7.5);
  const answer = excel.call("PARTITION.ORDERED", log, 1, row(1, 1, 1), 0.03, ...furnish);
  expect(messageOf(answer)).toBe(
    "doses has 3 values and dosePositions has 1. Give as many of both.",
  );
});
