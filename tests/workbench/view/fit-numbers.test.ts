import { expect, test } from "vitest";
import { fitted } from "../../../src/workbench/view/fit-numbers";

/** A type whose every sign is one wide. */
const widthOf = (text: string) => text.length;

test.each([
  ["what fits stays as it is", "1,234.56", 8, "1,234.56"],
  ["a number in a format is not cut", "1,234.56", 7, "#######"],
  ["nor is a date", "2026-11-25", 9, "#########"],
  ["nor a short number, whose digits may be asked for", "1234.56", 6, "######"],
  ["a number as it was computed is rounded", "0.123456789012", 6, "0.1235"],
  ["and a short one with more decimals than a format has", "0.45359237", 8, "0.453592"],
  ["also below 0", "-3.14159265358979", 5, "-3.14"],
  ["but never its whole part", "123456789.25", 8, "########"],
  ["as far as it goes", "123456789.25", 10, "123456789"],
  ["where there is no room at all there is one sign", "12345", 0, "#"],
])("%s", (_, text, width, shown) => {
  expect(fitted({ text, width, widthOf, narrowest: 1 })).toEqual({ text: shown, narrowed: 1 });
});

test.each([
  ["a type that is wider than the counted one is narrowed", "2026-11-25", 9, "2026-11-25", 0.9],
  ["as little as needed", "2026-11-25", 9.5, "2026-11-25", 0.95],
  ["but no further than that one", "2026-11-25", 8, "########", 1],
  ["a number as it was computed is rounded first", "0.123456789012", 13, "0.12345678901", 1],
])("%s", (_, text, width, shown, narrowed) => {
  expect(fitted({ text, width, widthOf, narrowest: 0.85 })).toEqual({ text: shown, narrowed });
});
