import { describe, expect, test, vi } from "vitest";
import * as typing from "../../../src/workbench/typing/segmenter";

const { "Intl.Segmenter": QuickSegmenter } = typing;

const texts = [
  "=SUM(A2:A6)*2",
  "A",
  "",
  "a\u0301bc",
  "\r\n",
  "a\r\nb",
  "a\r",
  "1\ufe0f\u20e3+1",
  "👩‍🔬=1",
  "1👩‍🔬🇩🇪",
  "größe",
  "a\u200db",
  "~\u007f",
];

describe.each(["grapheme", "word"] as const)("by %s", (granularity) => {
  test.each(texts)("%j is cut as the browser cuts it", (text) => {
    const own = new QuickSegmenter("en", { granularity }).segment(text);
    const native = new Intl.Segmenter("en", { granularity }).segment(text);
    expect([...own]).toEqual([...native]);
    expect([...own]).toEqual([...native]);
    expect(own.containing(1)).toEqual(native.containing(1));
  });
});

test("the first letter of a formula is told without its rest", () => {
  const native = vi.spyOn(Intl.Segmenter.prototype, "segment");
  const segmenter = new QuickSegmenter("en", { granularity: "grapheme" });
  const first = segmenter.segment("SUM(A1:A3)")[Symbol.iterator]().next();
  expect(first.value?.segment).toBe("S");
  expect(native).not.toHaveBeenCalled();
  native.mockRestore();
});
