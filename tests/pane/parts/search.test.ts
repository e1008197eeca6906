import { describe, expect, test } from "vitest";
import { rank, search, searchKey } from "../../../src/pane/parts/search";

test.each([
  ["Fiber, refined", "fibre refined"],
  ["Mühlen-Öl", "muhlen ol"],
  ["DOSE.PUMP [L/h]", "dose pump l/h"],
  ["m²/g", "m²/g"],
])("%s is searched as %s", (text, key) => {
  expect(searchKey(text)).toBe(key);
});

describe("rank", () => {
  test("needs every word somewhere", () => {
    expect(rank("pump litre", ["DOSE.PUMP", "litres per hour"])).toBeGreaterThan(0);
    expect(rank("pump barrel", ["DOSE.PUMP", "litres per hour"])).toBe(0);
  });
  test("prefers earlier texts, and the start of a word to its inside", () => {
    expect(rank("dose", ["dose", "other"])).toBeGreaterThan(rank("dose", ["other", "dose"]));
    expect(rank("dose", ["dose"])).toBeGreaterThan(rank("dose", ["overdose"]));
  });
});

test("nothing asked gives all as they stand, a search the best first", () => {
  const items = ["overdose", "pump", "dose"];
  expect(search(" ", items, (one) => [one])).toEqual(items);
  expect(search("dose", items, (one) => [one])).toEqual(["dose", "overdose"]);
});
