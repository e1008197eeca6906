import { describe, expect, test } from "vitest";
import { compares, holds, sameEntry } from "../../../src/workbench/entries/compare-entry";
import type { Value } from "../../../src/workbook/book";
import type { Comparison } from "../../../src/workbook/sheet-rules";

const failed = { error: "#REF!" };

describe("a number is compared with its bounds", () => {
  test.each<[Comparison, number, Value, Value, boolean]>([
    ["between", 1, 1, 5, true],
    ["between", 5, 1, 5, true],
    ["between", 5.001, 1, 5, false],
    ["notBetween", 1, 1, 5, false],
    ["notBetween", 0.999, 1, 5, true],
    ["equal", 2, 2, null, true],
    ["equal", 3, 2, null, false],
    ["notEqual", 2, 2, null, false],
    ["greaterThan", 2, 2, null, false],
    ["greaterThanOrEqual", 2, 2, null, true],
    ["lessThan", 2, 2, null, false],
    ["lessThanOrEqual", 2, 2, null, true],
    ["lessThan", -1, null, null, true],
    ["lessThan", 1, null, null, false],
  ])("%s: %d with %j and %j is %j", (comparison, value, from, to, fits) => {
    expect(compares[comparison](value, from, to)).toBe(fits);
  });

  test.each(Object.keys(compares) as Comparison[])(
    "a bound that fails forbids nothing: %s",
    (comparison) => expect(compares[comparison](7, failed, "word")).toBe(true),
  );
});

test.each<[Value, boolean]>([
  [true, true],
  [1, true],
  [false, false],
  [0, false],
  [failed, false],
])("a formula that gives %j allows an entry: %j", (value, allowed) => {
  expect(holds(value)).toBe(allowed);
});

test.each<[Value, Value, boolean]>([
  ["Even", "even", true],
  ["even", "odd", false],
  [7, 7, true],
  [7, "7", false],
])("%j and %j are one choice: %j", (choice, entry, same) => {
  expect(sameEntry(choice, entry)).toBe(same);
});
