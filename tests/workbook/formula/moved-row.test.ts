import { describe, expect, test } from "vitest";
import { inMovedRow } from "../../../src/workbook/formula/moved-row";

describe("a formula whose row is put three rows further down", () => {
  test.each([
    ["reads its row there", "B2*C2+$D2", "B5*C5+$D5"],
    ["keeps what a dollar sign holds", "B2/SUM(B$2:B$9)*$H$1", "B5/SUM(B$2:B$9)*$H$1"],
    ["reads as far above as before", "E1+D2", "E4+D5"],
    ["keeps a function of ours", "WETEND.DOSE.TARGET(B2, C2)", "WETEND.DOSE.TARGET(B5, C5)"],
    ["keeps texts and names that look like cells", 'LOG10(B2)&"B2"&B2_x', 'LOG10(B5)&"B2"&B2_x'],
    [
      "reads what it read on another sheet",
      "Prices!B2+'Old log'!B2:C3",
      "Prices!B2+'Old log'!B2:C3",
    ],
    ["reads its own sheet as itself", "Log!B2+log!B2:C3", "Log!B5+log!B5:C6"],
    ["moves whole rows, not columns", "SUM(2:2)+SUM(B:B)", "SUM(5:5)+SUM(B:B)"],
    ["moves a cell behind one of another sheet", "Prices!B2+B2", "Prices!B2+B5"],
  ])("%s: %s", (_, formula, moved) => expect(inMovedRow(formula, "Log", 3)).toBe(moved));
});

test("what would stand above the first row, or below the last, is no cell", () => {
  expect(inMovedRow("B2+C5", "Log", -3)).toBe("#REF!+C2");
  expect(inMovedRow("B2+B1048576", "Log", 1)).toBe("B3+#REF!");
});
