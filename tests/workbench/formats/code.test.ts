import { expect, test } from "vitest";
import {
  asPercentage,
  codeOfShown,
  fewerDecimals,
  isGrouped,
  moreDecimals,
  withoutThousands,
  withThousands,
} from "../../../src/workbench/formats/code";

test.each([
  ["0", "0.0", "0"],
  ["0.00", "0.000", "0.0"],
  ["0.0", "0.00", "0"],
  ["0.0#", "0.0#0", "0.0"],
  ["#,##0", "#,##0.0", "#,##0"],
  ["#,##0.0,", "#,##0.00,", "#,##0,"],
  ["0.0 %", "0.00 %", "0 %"],
  ["0.00E+00", "0.000E+00", "0.0E+00"],
  ["0.0;[Red]-0.0;0.0", "0.00;[Red]-0.00;0.00", "0;[Red]-0;0"],
  ['"no. 0.1: "0.0 "kg/t"', '"no. 0.1: "0.00 "kg/t"', '"no. 0.1: "0 "kg/t"'],
  ["0.0;-0.0;-", "0.00;-0.00;-", "0;-0;-"],
  // Days, times, fractions and text have no decimals to add or to take.
  ["dd.mm.yyyy", "dd.mm.yyyy", "dd.mm.yyyy"],
  ["mm:ss.0", "mm:ss.0", "mm:ss.0"],
  ["# ?/?", "# ?/?", "# ?/?"],
  ["@", "@", "@"],
])("%s with a decimal more is %s, with one less %s", (code, more, fewer) => {
  expect([moreDecimals(code, "7"), fewerDecimals(code, "7")]).toEqual([more, fewer]);
});

test.each([
  ["0.333333", "0.0000000", "0.00000"],
  ["12", "0.0", "0"],
  ["-4.5", "0.00", "0"],
  ["1.2e-7", "0.00E+00", "0E+00"],
])("without a format, %s is what is gone out from", (shown, more, fewer) => {
  expect([moreDecimals("General", shown), fewerDecimals("General", shown)]).toEqual([more, fewer]);
});

test("there are no more than thirty decimals", () => {
  const most = `0.${"0".repeat(30)}`;
  expect(moreDecimals(most, "0")).toBe(most);
  expect(codeOfShown("1e+21")).toBe("0E+00");
});

test.each([
  ["0", "#,##0", "0"],
  ["0.00 %", "#,##0.00 %", "0.00 %"],
  ["00000", "00,000", "00000"],
  ["0.0;[Red]-0.0", "#,##0.0;[Red]-#,##0.0", "0.0;[Red]-0.0"],
])("%s with thousands set apart is %s, and back %s", (code, grouped, back) => {
  expect(withThousands(code, "7")).toBe(grouped);
  expect([isGrouped(code), isGrouped(grouped)]).toEqual([false, true]);
  expect(withoutThousands(grouped)).toBe(back);
});

test("thousands are left where there are none to set apart", () => {
  for (const code of ["0.0E+00", "000-000", "yyyy-mm-dd", "@", "#,##0"])
    expect(withThousands(code, "7")).toBe(code);
  expect(withThousands("General", "1234.5")).toBe("#,##0.0");
});

test.each([
  ["General", "0.05", "0 %"],
  ["General", "0.153", "0.0 %"],
  ["General", "0.333333", "0.00 %"],
  ["0.00000", "0.33333", "0.000 %"],
  ["yyyy-mm-dd", "46000", "0 %"],
  ["0.0%", "0.153", "0.0%"],
])("%s, shown as %s, becomes %s", (code, shown, percentage) => {
  expect(asPercentage(code, shown)).toBe(percentage);
});
