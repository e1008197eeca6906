import { expect, test } from "vitest";
import { readCode } from "../../../src/workbench/formats/read-code";

test.each([
  "0.00",
  "#,##0",
  "0.0 %",
  "yyyy-mm-dd",
  "d mmm yyyy hh:mm",
  "h:mm AM/PM",
  "[h]:mm",
  "0.00E+00",
  "[Red]-0.0",
  "[>=1000]#,##0;[Color 5]0.00",
  '0;-0;0;"not measured: "@',
  '0.0 "kg/t"',
  "# ?/?",
  "€ #,##0.00",
  "[$€-407] #,##0.00",
  "_(#,##0_);(#,##0)",
  "0\\m",
  "@",
  "General",
])("%s is read", (code) => {
  expect(readCode(` ${code} `)).toEqual({ code });
});

test("nothing is the general format, and both forms of an exponent are known", () => {
  expect(readCode("")).toEqual({ code: "General" });
  expect(readCode("0.0e+00")).toEqual({ code: "0.0E+00" });
});

test.each([
  ["0.0 kg/t", 'Words stand in quotation marks: 0.0 "kg/t".'],
  ["0 kg", 'Words stand in quotation marks: 0 "kg".'],
  ["0 °C", 'Words stand in quotation marks: 0 "°C".'],
  ["abc", 'Words stand in quotation marks, as in 0.0 "kg/t".'],
  ['0.0 "kg', "A quotation mark is not closed."],
  ["[Red", "A square bracket is not closed."],
  [
    "[Blau]0.0",
    "[Blau] is not known. In square brackets stand a colour, [Red] or [Color 5], a condition, [>=100], or hours beyond a day, [h].",
  ],
  [
    "0;0;0;@;0",
    "There are more than four parts: they are for positive numbers, negative ones, zero and text.",
  ],
  ["0.00E00", "After E stands + or -, as in 0.00E+00."],
  ["0_", "After _ stands the character that it is for."],
  ["yyyy-mm-dd 0", "A part shows a date or a number, not both."],
])("%s is refused: %s", (code, problem) => {
  expect(readCode(code)).toEqual({ problem });
});
