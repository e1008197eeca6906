import { expect, test } from "vitest";
import { shownValue } from "../../../src/workbench/view/shown-value";

test.each([
  [null, undefined, ""],
  [true, undefined, "TRUE"],
  ["much", undefined, "much"],
  [{ error: "#N/A" }, "yyyy-mm-dd", "#N/A"],
  [0.1 + 0.2, undefined, "0.3"],
  [0.0080432685039, "0.00%", "0.0080432685039"],
  [561.97364701, '#,##0" t/d"', "561.97364701"],
  [45658, "yyyy-mm-dd", "2025-01-01"],
  [45658, "mmm yyyy", "Jan 2025"],
  [45658, "General", "45658"],
])("%o in the format %s is written %s", (value, pattern, shown) => {
  expect(shownValue(value, pattern)).toBe(shown);
});
