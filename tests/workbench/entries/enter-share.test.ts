import { expect, test } from "vitest";
import { asShare } from "../../../src/workbench/entries/enter-share";

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
