import { numfmt } from "@univerjs/core";
import { expect, test } from "vitest";
import { asShare, withoutNoise } from "../../../src/workbench/entries/enter-share";

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

test("what the grid reads from per cent is the number that is meant", () => {
  const tenths = Array.from({ length: 1001 }, (_, index) => String(index / 10));
  const read = tenths.map((text) => numfmt.parseNumber(`${text}%`)?.v as number);
  const meant = tenths.map((text) => Number(`${text}e-2`));
  expect(read).not.toEqual(meant);
  expect(read.map(withoutNoise)).toEqual(meant);
});
