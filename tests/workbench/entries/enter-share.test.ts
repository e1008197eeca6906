import { numfmt } from "@univerjs/core";
import { expect, test } from "vitest";
import { asPercentage, asShare } from "../../../src/workbench/entries/enter-share";

test.each([
  ["82", 0.82],
  ["82%", 0.82],
  ["100", 1],
  ["-5", -0.05],
  ["1,250", 12.5],
  ["0.3%", 0.003],
])("%s is the share %d", (typed, share) => {
  expect(asShare(typed)).toBe(share);
});

test.each(["0.82", "-0.5", "0", "soon", "5%%", "2026-03-04", "0.00001%", ""])(
  "%s stays as it was typed",
  (typed) => {
    expect(asShare(typed)).toBe(typed);
  },
);

test("what is typed as a percentage is the number that is meant, which the grid misses", () => {
  const tenths = Array.from({ length: 1001 }, (_, index) => String(index / 10));
  const meant = tenths.map((text) => Number(`${text}e-2`));
  expect(tenths.map((text) => numfmt.parseNumber(`${text}%`)?.v)).not.toEqual(meant);
  expect(tenths.map((text) => asPercentage(`${text}%`)?.v)).toEqual(meant);
});

test.each([
  ["82%", 0.82, "0%"],
  ["-14.3%", -0.143, "0.00%"],
  ["1,250%", 12.5, "0%"],
])("%s is %d, shown by %s", (typed, v, pattern) => {
  expect(asPercentage(typed)).toMatchObject({ v, s: { n: { pattern } } });
});

test.each(["82", "0.82", "5%%", "%", "soon 5%", "=5%", ""])("%j is no percentage", (typed) => {
  expect(asPercentage(typed)).toBeUndefined();
});
