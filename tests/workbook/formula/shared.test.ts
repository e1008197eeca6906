import { expect, test } from "vitest";
import { shiftedFormula } from "../../../src/workbook/formula/shared";

test.each([
  ["A2*2", 3, 0, "A5*2"],
  ["A2*2", 0, 2, "C2*2"],
  ["$A2+A$2+$A$2", 1, 1, "$A3+B$2+$A$2"],
  ["SUM(B2:D9)", 1, 1, "SUM(C3:E10)"],
  ["SUM(A:A)+SUM($B:C)", 4, 1, "SUM(B:B)+SUM($B:D)"],
  ["SUM(1:1)+SUM(2:$3)", 2, 5, "SUM(3:3)+SUM(4:$3)"],
  ["'Log A1'!B2&\"A1\"", 1, 0, "'Log A1'!B3&\"A1\""],
  ["log[A1]+LOG10(A1)", 1, 0, "log[A1]+LOG10(A2)"],
  ["A1", -1, 0, "A1048576"],
  ["Rate1A+A1", 1, 0, "Rate1A+A2"],
])("%s moved %i down and %i right is %s", (formula, rows, columns, expected) => {
  expect(shiftedFormula(formula)(rows, columns)).toBe(expected);
});
