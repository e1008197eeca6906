import { expect, test } from "vitest";
import { reshapings } from "../../../src/workbench/book/reshaped";

const sheets = (...names: string[]) => names.map((name) => ({ id: name.toLowerCase(), name }));

test.each([
  ["nothing", false, sheets("A", "B"), []],
  ["lines", true, sheets("A", "B"), ["rows or columns were inserted, deleted or moved"]],
  ["a sheet between the others", false, sheets("A", "New", "B"), ["sheets were added"]],
  ["one sheet less", false, sheets("B"), ["sheets were deleted"]],
  ["another name", false, [{ id: "a", name: "C" }, ...sheets("B")], ["sheets were renamed"]],
  ["another order", false, sheets("B", "A"), ["sheets were put in another order"]],
  [
    "several",
    true,
    sheets("B", "C"),
    ["rows or columns were inserted, deleted or moved", "sheets were added", "sheets were deleted"],
  ],
])("of a workbook is said what became of it: %s", (_, linesMoved, now, words) => {
  expect(reshapings(linesMoved, sheets("A", "B"), now)).toEqual(words);
});
