import { expect, test } from "vitest";
import { emulateExcel, type HostError, row } from "../host/emulated-excel";

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
