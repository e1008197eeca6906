import { expect, test } from "vitest";
import { fitted } from "../../src/workbench/fit-numbers";

/** A type whose every sign is one wide. */
const widthOf = (text: string) => text.length;

test.each([
  ["what fits stays as it is", "1,234.56", 8, "1,234.56"],
  ["a number in a format is not cut", "1,234.56", 7, "#######"],
  ["nor is a date", "2026-11-25", 9, "#########"],
  ["nor a short number, whose digits may be asked for", "1234.56", 6, "######"],
  ["a number as it was computed is rounded", "0.123456789012", 6, "0.1235"],
  ["also below 0", "-3.14159265358979", 5, "-3.14"],
  ["but never its whole part", "123456789.25", 8, "########"],
  ["as far as it goes", "123456789.25", 10, "123456789"],
  ["where there is no room at all there is one sign", "12345", 0, "#"],
])("%s", (_, text, width, shown) => {
  expect(fitted({ text, width, widthOf })).toBe(shown);
});
